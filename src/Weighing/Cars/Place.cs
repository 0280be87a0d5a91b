namespace ScaleLink.Weighing.Cars;

/// <summary>A place in the car, mm: behind the front axle, left of the centreline, above the ground.</summary>
readonly record struct Place(double BehindFrontAxleMm, double LeftOfCentreMm, double HeightMm = 0)
{
    /// <summary>ISO 8855: forward, from the front axle.</summary>
    public double X => -BehindFrontAxleMm;

    /// <summary>ISO 8855: left, from the centreline.</summary>
    public double Y => LeftOfCentreMm;
}
