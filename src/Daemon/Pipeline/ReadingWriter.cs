using ScaleLink.Weighing;
using ScaleLink.Weighing.Settling;

namespace ScaleLink.Daemon.Pipeline;

/// <summary>Puts blocks and estimate into a reading: uncertainties combined, what is not known left out, the reason in words.</summary>
internal sealed class ReadingWriter(IReadOnlyList<PadChannel> pads)
{
    public BayReading Incomplete((long Seq, long AtNs) instant, Dictionary<Corner, PadBlock> blocks) =>
        Bare(instant, blocks, BayVerdict.Incomplete, Missing(blocks));

    public BayReading Raised((long Seq, long AtNs) instant, Dictionary<Corner, PadBlock> blocks, IReadOnlyList<Corner> off) =>
        Bare(instant, blocks, BayVerdict.Raised, off.Count == 4 ? "The pads are empty." : $"Off the pads: {string.Join(", ", off)}.");

    public BayReading Weighed((long Seq, long AtNs) instant, Dictionary<Corner, PadBlock> blocks, SettlingReading estimate)
    {
        var verdict = VerdictOf(estimate.Verdict);
        var calibration = Corners.From(c => CalibrationPart(c, estimate.Loads[c]));
        // Pads without their own time are skewed by up to the adapters' delay: while the car moves their shares would be invented.
        var canShare = verdict == BayVerdict.Settled || blocks.Values.All(b => b.IsTimed);
        var shares = canShare ? LoadShares.Of(estimate.Loads) : null;
        return new BayReading
        {
            Seq = instant.Seq,
            AtNs = instant.AtNs,
            Verdict = verdict,
            Corners = [.. Corners.All.ToArray().Select(c => Corner(c, blocks) with
            {
                LoadKg = new Quantity(estimate.Loads[c], Norm(estimate.StandardUncertainty?[c], calibration[c]) ?? double.NaN),
                Budget = Budget(estimate, c, calibration[c]),
            }).Select(WithoutEmptyClaim)],
            TotalKg = Combine(estimate.TotalKg, Weighing.Corners.Same(1), calibration),
            CrossWeightPercent = shares is { } x ? Combine(estimate.CrossWeightPercent, x.CrossWeightSlope, calibration) : null,
            FrontSharePercent = shares is { } f ? Combine(estimate.FrontSharePercent, f.FrontSlope, calibration) : null,
            LeftSharePercent = shares is { } l ? Combine(estimate.LeftSharePercent, l.LeftSlope, calibration) : null,
            FrontSideDifferenceKg = Combine(estimate.FrontSideDifferenceKg, new Corners(1, -1, 0, 0), calibration),
            RearSideDifferenceKg = Combine(estimate.RearSideDifferenceKg, new Corners(0, 0, 1, -1), calibration),
            SettledInSeconds = estimate.SecondsLeft,
            CaptureReady = estimate.CaptureReady,
            Remark = RemarkOn(verdict, estimate, canShare),
        };
    }
}
