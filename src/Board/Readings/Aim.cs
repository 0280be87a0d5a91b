using ScaleLink.Api.V1;

namespace ScaleLink.Board.Readings;

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

/// <summary>Compares with the target by the rule that a reading conforms only when its whole interval does (JCGM 106:2012, 8.3: guarded acceptance).</summary>
internal static class AimCheck
{
    /// <summary>Only settled loads are judged at all.</summary>
    public static Aim Of(Loads loads)
    {
        if (loads.Verdict != Verdict.Settled || loads.Target is not { } target || Coverage.Expanded(loads.CrossWeightPercent) is not { } expanded)
            return Aim.Unknown;
        var off = Off(loads);
        if (Math.Abs(off) + expanded <= target.TolerancePercent)
            return Aim.Within;
        if (Math.Abs(off) - expanded <= target.TolerancePercent)
            return Aim.TooCloseToTell;
        return off > 0 ? Aim.High : Aim.Low;
    }

    /// <summary>Distance from the target, percent, positive when RF + LR carries too much.</summary>
    public static double Off(Loads loads) => loads.CrossWeightPercent.Value - loads.Target.CrossWeightPercent;
}
