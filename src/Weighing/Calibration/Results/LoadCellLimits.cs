namespace ScaleLink.Weighing.Calibration.Results;

/// <summary>
/// Limits for load cells, in verification intervals v. Source: OIML R 60-1:2021, 5.3 to 5.5, and R 60-2:2021, 2.8.3.
/// </summary>
static class LoadCellLimits
{
    /// <summary>Share of the instrument's error that a load cell may use when its maker states none.</summary>
    public const double Share = 0.7;

    // Part of the permissible error for creep in 30 minutes, and between 20 and 30 minutes.
    const double CreepPart = 0.7, LateCreepPart = 0.15;

    /// <summary>Permissible error of a class C cell at a load in intervals; null beyond 10 000.</summary>
    public static double? Error(double loadInIntervals, double share = Share) =>
        share * ErrorLimits.Factor(AccuracyClass.III, loadInIntervals);

    /// <summary>Permissible creep within 30 minutes at a load in intervals.</summary>
    public static double? Creep(double loadInIntervals) => CreepPart * Error(loadInIntervals);

    /// <summary>Permissible creep between 20 and 30 minutes at a load in intervals.</summary>
    public static double? LateCreep(double loadInIntervals) => LateCreepPart * Error(loadInIntervals);

    /// <summary>
    /// Permissible change of the empty output after 30 minutes of load, when it was read at <paramref name="lateness"/>
    /// times the specified time, 1 to 1.5; null beyond.
    /// </summary>
    public static double? ZeroReturn(double lateness = 1) => lateness is >= 1 and <= 1.5 ? 0.5 * (1 - (lateness - 1)) : null;

    /// <summary>
    /// Time for loading and coming to rest before a reading, classes C and D, s, for a change of load in kg.
    /// Source: OIML R 60-2:2021, Table 1.
    /// </summary>
    public static double SettlingSeconds(double changeKg) => Math.Abs(changeKg) switch
    {
        <= 10 => 10,
        <= 100 => 20,
        <= 1000 => 30,
        <= 10000 => 40,
        <= 100000 => 50,
        _ => 60,
    };
}
