using ScaleLink.Measure;

namespace ScaleLink.Daemon.Bay;

/// <summary>What can be said of the four loads together.</summary>
internal enum BayVerdict
{
    /// <summary>A pad is missing, silent, or without zero or calibration.</summary>
    Incomplete,
    /// <summary>The car is off one or more pads.</summary>
    Raised,
    /// <summary>It moves; nothing is claimed.</summary>
    Moving,
    /// <summary>It comes to rest.</summary>
    Settling,
    /// <summary>It rests within the tolerance.</summary>
    Settled,
    /// <summary>Something touched the settled car.</summary>
    Disturbed,
}

/// <summary>One part of an uncertainty, kg.</summary>
internal readonly record struct UncertaintyPart(string Name, double StandardUncertaintyKg);

/// <summary>One correction and its size; absent when refused, with the reason.</summary>
internal readonly record struct Correction(string Name, double? SizeKg, Sentence Reason = default);

/// <summary>One corner on the instant of its reading.</summary>
internal sealed record CornerReading
{
    /// <summary>Which.</summary>
    public required Corner Corner { get; init; }

    /// <summary>Its load, kg; absent when not known.</summary>
    public Value? LoadKg { get; init; }

    /// <summary>Where its uncertainty comes from; empty without a claim.</summary>
    public IReadOnlyList<UncertaintyPart> Budget { get; init; } = [];

    /// <summary>False until the pad has been calibrated with known masses.</summary>
    public bool Calibrated { get; init; }

    /// <summary>Names the calibration behind the load.</summary>
    public string Calibration { get; init; } = "";

    /// <summary>Every correction in the load.</summary>
    public IReadOnlyList<Correction> Corrections { get; init; } = [];

    /// <summary>What is wrong or uncertain.</summary>
    public IReadOnlyList<Diagnostic> Faults { get; init; } = [];
}

/// <summary>All corners on one instant.</summary>
internal sealed record BayReading
{
    /// <summary>One more for each reading of this run.</summary>
    public required long Seq { get; init; }

    /// <summary>The instant, ns on the daemon's clock.</summary>
    public required long AtNs { get; init; }

    /// <summary>What can be said of the loads together.</summary>
    public required BayVerdict Verdict { get; init; }

    /// <summary>Four, in the order LF, RF, LR, RR.</summary>
    public required IReadOnlyList<CornerReading> Corners { get; init; }

    /// <summary>Sum of the loads, kg.</summary>
    public Value? TotalKg { get; init; }

    /// <summary>(RF + LR) / total, percent.</summary>
    public Value? CrossWeightPercent { get; init; }

    /// <summary>(LF + RF) / total, percent.</summary>
    public Value? FrontWeightPercent { get; init; }

    /// <summary>(LF + LR) / total, percent.</summary>
    public Value? LeftSideWeightPercent { get; init; }

    /// <summary>LF minus RF, kg.</summary>
    public Value? FrontLeftRightDifferenceKg { get; init; }

    /// <summary>LR minus RR, kg.</summary>
    public Value? RearLeftRightDifferenceKg { get; init; }

    /// <summary>Expected seconds until settled.</summary>
    public double? SettledInSeconds { get; init; }

    /// <summary>Settled long enough for the record.</summary>
    public bool WeighingReady { get; init; }

    /// <summary>Why the verdict is what it is, for the crew.</summary>
    public required Sentence Remark { get; init; }
}
