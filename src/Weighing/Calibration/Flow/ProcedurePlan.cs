using System.Text.Json.Serialization;
using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Calibration.Procedure;
using ScaleLink.Weighing.Pads;

namespace ScaleLink.Weighing.Calibration.Flow;

/// <summary>What a calibration procedure is going to be: the pad, the masses, the loads, the tests.</summary>
sealed record ProcedurePlan
{
    /// <summary>Calibration in effect: names the pad, its cells and its capacity.</summary>
    public required PadCalibration Before { get; init; }

    /// <summary>Where in the bay the pad stands.</summary>
    public required Corner Corner { get; init; }

    /// <summary>The masses at hand.</summary>
    public required MassSet Masses { get; init; }

    /// <summary>Loads of one run on the way up, the empty pad left out, each heavier than the one before.</summary>
    public required IReadOnlyList<LoadStack> Loads { get; init; }

    /// <summary>Where the calibration procedure takes place.</summary>
    public required Place Place { get; init; }

    /// <summary>Repetitions from empty to full; three give repeatability (OIML R 60-2:2021, 2.10.1).</summary>
    [JsonPropertyName("runs")]
    public int Repetitions { get; init; } = 3;

    /// <summary>True to read the way down as well, for hysteresis and zero return.</summary>
    public bool WayDown { get; init; } = true;

    /// <summary>Times the highest load is put on and off first; three by OIML R 60-2:2021, 2.10.1.</summary>
    public int Preloads { get; init; } = 3;

    /// <summary>Mass of a corner-load test, put over each cell and in the middle; null to leave it out.</summary>
    public LoadStack? CornerLoad { get; init; }

    /// <summary>True to hold the highest load for 30 minutes at the end.</summary>
    public bool CreepTest { get; init; }

    /// <summary>Step of the sum of counts.</summary>
    public double ResolutionCounts { get; init; } = 1;

    /// <summary>Change of span per kelvin from the data sheet, relative; null where unknown.</summary>
    public double? SpanPerKelvin { get; init; }

    /// <summary>See <see cref="ProcedureInput.LoopApart"/>; absent in plans of before, and so false there.</summary>
    public bool LoopApart { get; init; }

    /// <summary>
    /// Trimmed counts of the empty pad as it was known before, the lightest of them; null where nothing is known, and in plans of before.
    /// </summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? EmptyCounts { get; init; }

    /// <summary>Who begins it and measures; empty in plans of before, whose calibrations name who adopted them.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public string? Who { get; init; }

    /// <summary>What must be reached; null to accept what comes.</summary>
    public AskedUncertainty? Asked { get; init; }

    /// <summary>What readings must keep to.</summary>
    public ReadingLimits Limits { get; init; } = new();
}
