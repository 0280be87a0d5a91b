namespace ScaleLink.Weighing.SetupSheets;

/// <summary>How many values a field of a setup sheet has.</summary>
enum SheetScope
{
    /// <summary>One for the car.</summary>
    WholeCar,
    /// <summary>One at each axle.</summary>
    EachAxle,
    /// <summary>One at each corner.</summary>
    EachCorner,
    /// <summary>One for each place that the crew names, as for ballast.</summary>
    Named,
}
