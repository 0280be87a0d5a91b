using ScaleLink.Measure;

namespace ScaleLink.Api.V1;

public sealed partial class Loads
{
    /// <summary>Where cross weight stands against the target. Only settled loads are judged at all.</summary>
    public Aim Aim => Verdict == Verdict.Settled && Target is { } target && CrossWeightPercent is { } cross ? target.Band.Judge(cross.AsValue) : Aim.Unknown;

    /// <summary>Distance from the target, percent, positive when RF + LR carries too much; with the uncertainty of cross weight. Null without either.</summary>
    public Value? OffTarget => Target is { } target && CrossWeightPercent is { } cross ? cross.AsValue with { Estimate = cross.Estimate - target.CrossWeightPercent } : null;

    /// <summary>What one diagonal carries, kg: RF + LR, or LF + RR. Null where the loads are not all known.</summary>
    public Value? DiagonalKg(bool ofCrossWeight) => TotalKg is { } total && CrossWeightPercent is { } cross ? Shares.DiagonalKg(total.AsValue, cross.AsValue, ofCrossWeight) : null;
}

public sealed partial class Target
{
    /// <summary>The same for judging.</summary>
    public TargetBand Band => new(CrossWeightPercent, TolerancePercent);
}
