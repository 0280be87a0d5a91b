using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Links;
using ScaleLink.Measure;
using ScaleLink.Weighing.Pads;

namespace ScaleLink.Daemon.Bay;

/// <summary>How a pad stands at one instant. What is not known is absent, never zero.</summary>
internal sealed record PadSnapshot
{
    /// <summary>Its place in the bay file.</summary>
    public required PadConfiguration Configuration { get; init; }

    /// <summary>The corner it stands under.</summary>
    public Corner Corner => Configuration.Corner;

    /// <summary>How it stands.</summary>
    public required PadState State { get; init; }

    /// <summary>What it says of itself.</summary>
    public PadIdentity? Identity { get; init; }

    /// <summary>Age of the newest sample, ns.</summary>
    public long? AgeNs { get; init; }

    /// <summary>Samples a second over the last seconds.</summary>
    public double? MeasuredRateHz { get; init; }

    /// <summary>Mean load of the last half second, kg.</summary>
    public double? LoadKg { get; init; }

    /// <summary>Standard uncertainty of <see cref="LoadKg"/>: repeatability and calibration, kg.</summary>
    public double? LoadUncertaintyKg { get; init; }

    /// <summary>Pitch, degrees, the tested zero of the inclinometer taken off.</summary>
    public double? PitchDegrees { get; init; }

    /// <summary>Roll, degrees, the tested zero of the inclinometer taken off.</summary>
    public double? RollDegrees { get; init; }

    /// <summary>Temperature, degrees Celsius.</summary>
    public double? TemperatureCelsius { get; init; }

    /// <summary>The tested zero of the inclinometer; absent when it was never tested.</summary>
    public SavedInclinometerZero? InclinometerZero { get; init; }

    /// <summary>The zero in effect.</summary>
    public ZeroPoint? Zero { get; init; }

    /// <summary>The calibration in effect.</summary>
    public PadCalibration? Calibration { get; init; }

    /// <summary>While nobody knows which pad is here: the calibration of the one that belongs or was calibrated last at this corner.</summary>
    public PadCalibration? LastCalibration { get; init; }

    /// <summary>Totals since the daemon started.</summary>
    public required PadCounters Counters { get; init; }

    /// <summary>The pad's clock against the daemon's, parts per million.</summary>
    public double? ClockDriftPpm { get; init; }

    /// <summary>Mean delay of its bytes beyond the shortest, ms.</summary>
    public double? TransportJitterMs { get; init; }

    /// <summary>How it is watched for numbers that stand still; absent while no pad is known there.</summary>
    public FreezeEvidence? FreezeEvidence { get; init; }

    /// <summary>What is wrong with it.</summary>
    public required IReadOnlyList<Diagnostic> Faults { get; init; }
}

/// <summary>Totals of one pad since the daemon started.</summary>
internal readonly record struct PadCounters(long Bytes, long Frames, long BadFrames, long SkippedBytes, long MissedSamples, long RepeatedSamples, long Opened);
