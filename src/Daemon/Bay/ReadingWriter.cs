using ScaleLink.Measure;
using ScaleLink.Weighing.Settling;

namespace ScaleLink.Daemon.Bay;

/// <summary>Puts blocks and estimate into a reading: uncertainties combined, what is not known left out, the reason in words.</summary>
internal static class ReadingWriter
{
    private static readonly Corner[] AllCorners = Enum.GetValues<Corner>();

    /// <summary>What the pads that are there carry, with nothing claimed about it; an empty pad has no load.</summary>
    public static BayReading Incomplete((long Seq, long AtNs) instant, Dictionary<Corner, PadBlock> blocks, double raisedBelowKg) =>
        Bare(instant, blocks, BayVerdict.Incomplete, Missing(blocks)) with
        {
            Corners = [.. AllCorners.Select(c => Corner(c, blocks) with { LoadKg = blocks.TryGetValue(c, out var block) && block.LoadKg is { } load && load >= raisedBelowKg ? new Value(load, null) : null })],
        };

    public static BayReading Raised((long Seq, long AtNs) instant, Dictionary<Corner, PadBlock> blocks, IReadOnlyList<Corner> off) =>
        Bare(instant, blocks, BayVerdict.Raised, off.Count == 4 ? "The pads are empty." : $"Off the pads: {string.Join(", ", off)}.");

    public static BayReading Weighed((long Seq, long AtNs) instant, Dictionary<Corner, PadBlock> blocks, SettlingReading estimate)
    {
        var verdict = VerdictOf(estimate.Verdict);
        var calibration = new LoadUncertainty(c => blocks[c].Uncertainty, c => blocks[c].TiltUncertaintyKg);
        // Pads without their own time are skewed by up to the adapters' delay: while the car moves their shares would be invented.
        var canShare = verdict == BayVerdict.Settled || blocks.Values.All(b => b.IsTimed);
        var shares = canShare ? LoadShares.Of(estimate.Loads) : null;
        return new BayReading
        {
            Seq = instant.Seq,
            AtNs = instant.AtNs,
            Verdict = verdict,
            Corners = [.. AllCorners.Select(c => Corner(c, blocks) with
            {
                LoadKg = calibration.Combine(new Value(estimate.Loads[c], estimate.StandardUncertainty?[c]), Corners.Same(0).With(c, 1)),
                Budget = Budget(estimate.StandardUncertainty?[c], blocks[c]),
            })],
            TotalKg = calibration.Combine(estimate.TotalKg, Corners.Same(1)),
            CrossWeightPercent = shares is { } x ? calibration.Combine(estimate.CrossWeightPercent, x.CrossWeightSlope) : null,
            FrontWeightPercent = shares is { } f ? calibration.Combine(estimate.FrontWeightPercent, f.FrontSlope) : null,
            LeftSideWeightPercent = shares is { } l ? calibration.Combine(estimate.LeftSideWeightPercent, l.LeftSlope) : null,
            FrontLeftRightDifferenceKg = calibration.Combine(estimate.FrontLeftRightDifferenceKg, new Corners(1, -1, 0, 0)),
            RearLeftRightDifferenceKg = calibration.Combine(estimate.RearLeftRightDifferenceKg, new Corners(0, 0, 1, -1)),
            SettledInSeconds = estimate.SecondsLeft,
            WeighingReady = estimate.WeighingReady,
            Remark = RemarkOn(verdict, estimate, canShare),
        };
    }

    private static BayReading Bare((long Seq, long AtNs) instant, Dictionary<Corner, PadBlock> blocks, BayVerdict verdict, Sentence remark) => new()
    {
        Seq = instant.Seq,
        AtNs = instant.AtNs,
        Verdict = verdict,
        Corners = [.. AllCorners.Select(c => Corner(c, blocks))],
        Remark = remark,
    };

    private static CornerReading Corner(Corner corner, Dictionary<Corner, PadBlock> blocks) => blocks.TryGetValue(corner, out var block)
        ? new CornerReading { Corner = corner, Calibrated = block.IsCalibrated, Calibration = block.Calibration, Corrections = CorrectionsOf(block), Faults = block.Faults }
        : new CornerReading { Corner = corner };

    private static IReadOnlyList<Correction> CorrectionsOf(PadBlock block)
    {
        if (block.LoadKg is null)
            return [];
        var tilt = block.Faults.FirstOrDefault(f => f.Code == PadCodes.TiltBeyondCorrection);
        return (block.TiltKg, tilt) switch
        {
            ({ } size, _) => [new Correction("zero", block.ZeroKg), new Correction("tilt", size)],
            (_, { } refused) => [new Correction("zero", block.ZeroKg), new Correction("tilt", null, refused.Message)],
            _ => [new Correction("zero", block.ZeroKg)],
        };
    }

    private static IReadOnlyList<UncertaintyPart> Budget(double? rocking, PadBlock block)
    {
        if (rocking is not { } u)
            return [];
        var calibration = block.Uncertainty;
        UncertaintyPart[] sometimes =
        [
            new(UncertaintyPart.Placing, calibration.PlacingKg), new(UncertaintyPart.PerhapsAlike, calibration.PerhapsAlikeKg),
            new(UncertaintyPart.Alike, calibration.AlikeKg), new(UncertaintyPart.Tilt, block.TiltUncertaintyKg),
        ];
        return [new(UncertaintyPart.Rocking, u), new(UncertaintyPart.Calibration, calibration.OwnKg), .. sometimes.Where(part => part.StandardUncertaintyKg > 0)];
    }

    private static BayVerdict VerdictOf(SettlingVerdict verdict) => verdict switch
    {
        SettlingVerdict.Settling => BayVerdict.Settling,
        SettlingVerdict.Settled => BayVerdict.Settled,
        SettlingVerdict.Disturbed => BayVerdict.Disturbed,
        _ => BayVerdict.Moving,
    };

    private static string RemarkOn(BayVerdict verdict, SettlingReading estimate, bool canShare) => verdict switch
    {
        _ when !canShare => "A pad sends no time of its own: cross weight only once the car is settled.",
        _ when estimate.Fallback => "The car does not come to rest by itself: look for an engine, wind, or a person on the car.",
        BayVerdict.Disturbed => "Something touched the car.",
        BayVerdict.Settled => "Settled.",
        BayVerdict.Settling => "Coming to rest.",
        _ => "The car moves.",
    };

    private static Sentence Missing(Dictionary<Corner, PadBlock> blocks) => Sentence.Join(" ", AllCorners
        .Where(c => !blocks.TryGetValue(c, out var b) || b.LoadKg is null)
        .GroupBy(c => Why(c, blocks))
        .Select(reason => (Sentence)$"{string.Join(", ", reason)}: {reason.Key}"));

    private static Sentence Why(Corner corner, Dictionary<Corner, PadBlock> blocks)
    {
        if (!blocks.TryGetValue(corner, out var block))
            return "no pad in the bay file.";
        return block.Faults.Count > 0 ? (Sentence)$"{block.Faults[0].Message} ({block.Faults[0].Code})" : block.State switch
        {
            PadState.Live => "samples are being gathered.",
            PadState.Waiting => "waiting for its first sample.",
            _ => $"{block.State.ToString().ToLowerInvariant()}.",
        };
    }
}
