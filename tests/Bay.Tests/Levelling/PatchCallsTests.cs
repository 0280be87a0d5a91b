using Bay.Tests.Asking;
using ScaleLink.Api.V1;

namespace Bay.Tests.Levelling;

/// <summary>What the flat patch is asked over gRPC. Figures worked by hand; the rules of adjustment are least squares, common practice.</summary>
[Collection(AskingCollection.Name)]
public class PatchCallsTests(AskingBay bay)
{
    [Fact]
    public void A_round_of_differences_is_adjusted_and_nothing_is_saved()
    {
        // Round the patch 1.0 - 0.5 - 1.0 + 0.9 = 0.4 mm is left over, a tenth on each leg: LF 0, RF 0.9, RR 0.3, LR -0.8, mean 0.1.
        var report = bay.Daemon.Patch.CheckHeightMeasurement(new CheckHeightMeasurementRequest { HeightMeasurement = Round(0.9) });
        var shape = report.Shape;
        Assert.Equal([-0.1, 0.8, -0.9, 0.2], new[] { shape.HeightsMm.Lf, shape.HeightsMm.Rf, shape.HeightsMm.Lr, shape.HeightsMm.Rr }.Select(q => Math.Round(q.Estimate, 9)));
        Assert.Equal((0.1, 1.7, 1u), (Math.Round(shape.ClosureMm, 9), Math.Round(shape.SpreadMm, 9), shape.Spare));
        // (-0.1 - 0.8 + 0.9 + 0.2) / 4 on a rectangle; the Heron's tracks differ by 20 mm.
        Assert.Equal(0.05, shape.WarpMm.Estimate, 0.01);
        // Warp is high at LF and RR: it takes load off the other diagonal, on a stiffer car more.
        Assert.InRange(report.Effect.CrossWeightPercent, -0.2, -0.01);
        Assert.Null(bay.Daemon.Patch.GetPatch(new GetPatchRequest()).Shape);
    }

    [Fact]
    public void A_height_measurement_that_cannot_be_used_is_refused_by_its_code()
    {
        Assert.Equal("SL-529", Refused(null));
        Assert.Equal("SL-520", Refused(new HeightMeasurement()));
        Assert.Equal("SL-521", Refused(Round(9)));
        Assert.Equal("SL-529", Refused(Round(double.NaN)));
        Assert.Equal("SL-413", Refused(Heights(Corner.Lf, Corner.Rf, Corner.Lr, Corner.Unspecified)));
        Assert.Equal("SL-520", Refused(Heights(Corner.Lf, Corner.Rf, Corner.Lr)));
        Assert.Equal("SL-520", Refused(Heights(Corner.Lf, Corner.Rf, Corner.Lr, Corner.Rr, Corner.Lf)));
        var mixed = Heights(Corner.Lf, Corner.Rf, Corner.Lr, Corner.Rr);
        mixed.Differences.AddRange(Round(0.9).Differences);
        Assert.Equal("SL-529", Refused(mixed));
    }

    [Fact]
    public void The_fewest_shims_level_the_pads_and_leave_cross_weight_alone()
    {
        // To come within 0.5 mm of RF at 1.5: LF needs 1 (one piece), LR 1.5 (two), RR 0.5 or 1 (one); nothing less does. With 1 under RR both diagonals stand at 2.5.
        var plan = bay.Daemon.Patch.PlanShims(Shims(0.5, (0.5, 8), (1, 8)));
        Assert.True(plan.Levels);
        Assert.Equal([[1.0], [], [1.0, 0.5], [1.0]], plan.Stacks.Select(s => s.ThicknessesMm.ToArray()));
        Assert.Equal(0.5, plan.SpreadMm, 9);
        // LF and LR at 1.0, RF and RR at 1.5: a slope. Without warp it leaves cross weight alone but for the unlike tracks of the car; design, section 4.
        Assert.Equal(0.25, plan.HeightsAfterMm.Rf, 9);
        Assert.Equal(-0.25, plan.HeightsAfterMm.Lr, 9);
        Assert.InRange(plan.EffectAfter.CrossWeightPercent, -0.03, 0.03);
    }

    [Fact]
    public void Shims_that_do_not_reach_and_shims_that_are_none_are_told_apart()
    {
        Assert.Equal("SL-532", bay.WithoutHeightMeasurement);
        var plan = bay.Daemon.Patch.PlanShims(Shims(0.5, (2, 1)));
        Assert.Equal((false, "SL-528"), (plan.Levels, plan.Finding.Code));
        Assert.Equal("SL-529", bay.Code(() => bay.Daemon.Patch.PlanShims(Shims(0.5, (-1, 4)))));
        Assert.Equal("SL-529", bay.Code(() => bay.Daemon.Patch.PlanShims(Shims(0, (1, 4)))));
        Assert.Equal("SL-529", bay.Code(() => bay.Daemon.Patch.PlanShims(Shims(0.5, [.. Enumerable.Range(1, 7).Select(i => (i / 10.0, 1u))]))));
    }

    private string Refused(HeightMeasurement? heightMeasurement) => bay.Code(() => bay.Daemon.Patch.CheckHeightMeasurement(new CheckHeightMeasurementRequest { HeightMeasurement = heightMeasurement }));

    private static HeightMeasurement Round(double last)
    {
        var heightMeasurement = new HeightMeasurement { Note = "feelers" };
        foreach (var (from, to, mm) in new[] { (Corner.Lf, Corner.Rf, 1.0), (Corner.Rf, Corner.Rr, -0.5), (Corner.Rr, Corner.Lr, -1.0), (Corner.Lr, Corner.Lf, last) })
            heightMeasurement.Differences.Add(new PadDifference { From = from, To = to, Mm = mm, StandardUncertaintyMm = 0.3 });
        return heightMeasurement;
    }

    private static HeightMeasurement Heights(params Corner[] corners)
    {
        var heightMeasurement = new HeightMeasurement();
        heightMeasurement.Heights.AddRange(corners.Select(c => new PadHeight { Corner = c, Mm = 1, StandardUncertaintyMm = 0.1 }));
        return heightMeasurement;
    }

    private static PlanShimsRequest Shims(double spread, params (double Mm, uint Pieces)[] box)
    {
        var heightMeasurement = new HeightMeasurement();
        foreach (var (corner, mm) in new[] { (Corner.Lf, 0.0), (Corner.Rf, 1.5), (Corner.Lr, -0.5), (Corner.Rr, 0.5) })
            heightMeasurement.Heights.Add(new PadHeight { Corner = corner, Mm = mm, StandardUncertaintyMm = 0.1 });
        var request = new PlanShimsRequest { SpreadMm = spread, HeightMeasurement = heightMeasurement };
        request.Shims.AddRange(box.Select(s => new ShimSet { ThicknessMm = s.Mm, Pieces = s.Pieces }));
        return request;
    }
}
