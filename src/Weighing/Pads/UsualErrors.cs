namespace ScaleLink.Weighing.Pads;

/// <summary>
/// What is taken of a calibrated pad where its calibration procedure did not test and no data sheet stated it. A pad of cells of class C3 of
/// OIML R 60, well made, keeps to these.
/// </summary>
static class UsualErrors
{
    /// <summary>
    /// Change within 30 minutes under load, relative to the load: 0.7 of the error limit of class C3 with an apportioning factor of 0.7, 0.735
    /// of 3000 intervals at capacity. Source: OIML R 60-1:2021, 5.5.1.
    /// </summary>
    public const double CreepRelative = 0.735 / 3000;

    /// <summary>
    /// Difference between places on the pad, relative to the load, either way: cells alike within 0.3 % and wheels within 20 mm of the middle
    /// of a pad whose cells stand 170 mm from it. Common practice, no published source.
    /// </summary>
    public const double PositionRelative = 2.5e-4;

    /// <summary>Way down against way up, relative to the capacity of the pad. From memory: data sheets of cells of class C3 state 0.02 %.</summary>
    public const double HysteresisOfCapacity = 2e-4;

    /// <summary>Part of the capacity from which on all of it is taken; below in proportion. Loops open early; common practice, no published source.</summary>
    public const double HysteresisOpenAt = 0.25;

    /// <summary>Change of span, relative per kelvin. From memory: data sheets of cells of class C state 0.001 to 0.002 %.</summary>
    public const double SpanPerKelvin = 2e-5;
}
