namespace ScaleLink.Weighing.Settling;

/// <summary>Spells a claim out: loads, shares and differences, each with the uncertainty of its own combination of the pads.</summary>
static class ReadingOf
{
    const double DegreesOfFreedom = 60;

    /// <param name="claim">Null: values without uncertainty.</param>
    /// <param name="loads">Loads to show, kg.</param>
    public static SettlingReading Claim(ILoadClaim? claim, in Corners loads)
    {
        var shares = LoadShares.Of(loads);
        return new()
        {
            Verdict = SettlingVerdict.Moving,
            Loads = loads,
            StandardUncertainty = claim?.StandardUncertainty,
            TotalKg = Combine(claim, loads.Sum, Corners.Same(1)),
            CrossWeightPercent = shares is { } s ? Combine(claim, s.CrossWeight, s.CrossWeightSlope) : null,
            FrontWeightPercent = shares is { } f ? Combine(claim, f.Front, f.FrontSlope) : null,
            LeftSideWeightPercent = shares is { } l ? Combine(claim, l.Left, l.LeftSlope) : null,
            FrontLeftRightDifferenceKg = Combine(claim, loads.LF - loads.RF, Shares.FrontLeftRight),
            RearLeftRightDifferenceKg = Combine(claim, loads.LR - loads.RR, Shares.RearLeftRight),
            DegreesOfFreedom = DegreesOfFreedom,
        };
    }

    static Value Combine(ILoadClaim? claim, double value, in Corners slope) =>
        new(value, claim is null ? null : Math.Sqrt(claim.VarianceOf(slope)));
}
