using ScaleLink.Api.V1;

namespace ScaleLink.Client.Readings;

/// <summary>Where a settled cross weight stands against its target.</summary>
internal enum Aim
{
    /// <summary>No target, or nothing is claimed about the value.</summary>
    Unknown,
    /// <summary>Inside the tolerance with the whole interval of the uncertainty.</summary>
    Within,
    /// <summary>Above it with the whole interval.</summary>
    High,
    /// <summary>Below it with the whole interval.</summary>
    Low,
    /// <summary>The interval reaches over the edge of the tolerance: the reading cannot tell.</summary>
    TooCloseToTell,
}

/// <summary>Compares with the target by the rule that a reading conforms only when its uncertainty does (JCGM 106:2012, 8.3: guarded acceptance).</summary>
internal static class TargetCheck
{
    public static Aim Of(Quantity? crossWeight, Target? target)
    {
        if (target is null || Coverage.Expanded(crossWeight) is not { } expanded)
            return Aim.Unknown;
        var off = crossWeight!.Value - target.CrossWeightPercent;
        if (Math.Abs(off) + expanded <= target.TolerancePercent)
            return Aim.Within;
        if (Math.Abs(off) - expanded <= target.TolerancePercent)
            return Aim.TooCloseToTell;
        return off > 0 ? Aim.High : Aim.Low;
    }

    /// <summary>Only a live, settled reading is judged at all.</summary>
    public static Aim Of(Loads? live) => live is { Verdict: Verdict.Settled } ? Of(live.CrossWeightPercent, live.Target) : Aim.Unknown;
}
