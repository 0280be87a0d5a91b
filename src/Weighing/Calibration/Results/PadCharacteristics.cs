using ScaleLink.Weighing.Calibration.Masses;

namespace ScaleLink.Weighing.Calibration.Results;

/// <summary>A figure in kg and the load at which it was found.</summary>
readonly record struct AtLoad(double Kg, double LoadKg);

/// <summary>Change under a lasting load, kg. Source of the times: OIML R 60-1:2021, 3.7.1 and 5.5.1.</summary>
/// <param name="LoadKg">The load.</param>
/// <param name="After30MinKg">Output after 30 minutes minus the first.</param>
/// <param name="From20To30MinKg">Output after 30 minutes minus that after 20.</param>
readonly record struct Creep(double LoadKg, double After30MinKg, double From20To30MinKg);

/// <summary>One load of the calibration procedure, all repetitions together, net of each repetition's zero.</summary>
/// <param name="Load">What stood on the pad.</param>
/// <param name="Kg">Its mass; ballast at the value found.</param>
/// <param name="UpKg">Mean output on the way up.</param>
/// <param name="DownKg">Mean output on the way down, where it was read.</param>
/// <param name="SpreadKg">Largest minus smallest output on one way; null where nothing was repeated.</param>
/// <param name="WorstErrorKg">Of all readings, the output minus the mass that is furthest from zero.</param>
sealed record LevelResult(LoadStack Load, double Kg, double UpKg, double? DownKg, double? SpreadKg, double WorstErrorKg)
{
    /// <summary>Way down minus way up (OIML R 60-1:2021, 3.7.7).</summary>
    public double? HysteresisKg => DownKg - UpKg;
}

/// <summary>What a calibration procedure shows of the pad. Definitions: OIML R 60-1:2021, 3.5.10 and 3.7.</summary>
sealed record PadCharacteristics
{
    /// <summary>Loads in ascending order, the empty pad first.</summary>
    public required IReadOnlyList<LevelResult> Levels { get; init; }

    /// <summary>
    /// Furthest departure of the mean ascending signal from the straight line through zero and the highest load (3.7.13).
    /// </summary>
    public required AtLoad NonLinearity { get; init; }

    /// <summary>Largest difference, way down minus way up (3.7.7); null where no way down was read.</summary>
    public required AtLoad? Hysteresis { get; init; }

    /// <summary>Largest spread of one load on one way over the repetitions (3.7.14); null with a single repetition.</summary>
    public required AtLoad? Repeatability { get; init; }

    /// <summary>
    /// Of the repetitions, the empty pad afterwards minus before that is furthest from zero, kg (compare 3.5.10); null where
    /// it was not read.
    /// </summary>
    public required double? ZeroReturnKg { get; init; }

    /// <summary>Change under a lasting load; null where that test was left out.</summary>
    public Creep? Creep { get; init; }
}
