using ScaleLink.Api.V1;
using ScaleLink.Board.Connection;
using ScaleLink.Board.Watch;
using ScaleLink.Measure;

using Corner = ScaleLink.Api.V1.Corner;

namespace Board.Tests.Watch;

/// <summary>What the crew is told to do.</summary>
public class NextStepTests
{
    [Theory]
    [InlineData(50.02, "On target: leave the perches alone.")]
    [InlineData(49.98, "On target: leave the perches alone.")]
    [InlineData(52.00, "Lower RF or LR, or raise LF or RR.")]
    [InlineData(48.00, "Raise RF or LR, or lower LF or RR.")]
    [InlineData(50.19, "Too close to the edge of the tolerance to tell.")]
    [InlineData(50.21, "Too close to the edge of the tolerance to tell.")]
    public void A_settled_car_is_judged_with_its_uncertainty(double cross, string step) => Assert.Equal(step, For(Settled(cross)).Do);

    // By hand: 2 % of 1048 kg have to change diagonals.
    [Fact]
    public void The_mass_that_has_to_move_is_the_share_that_is_too_much() => Assert.StartsWith("21.0 kg have to go from RF + LR to LF + RR", For(Settled(52)).Why);

    [Fact]
    public void A_held_reading_gives_no_advice()
    {
        var view = new BayView(new(Freshness.Held, Settled(52), TimeSpan.FromSeconds(4)), new(Freshness.Absent), new(Freshness.Absent), DaemonDiagnostics.Ended);
        var step = NextStep.For(view, Unit.Kilogram);
        Assert.Equal("Do not use these numbers: no new ones come.", step.Do);
        Assert.Contains("SL-423", step.Why);
    }

    [Fact]
    public void A_fault_tells_its_remedy_once_for_all_the_corners_that_have_it()
    {
        var loads = new Loads { Verdict = Verdict.Incomplete };
        foreach (var corner in new[] { Corner.Lf, Corner.Rf, Corner.Lr })
            loads.Corners.Add(new CornerLoad { Corner = corner, Faults = { new ScaleLink.Api.V1.Diagnostic { Code = "SL-341", Message = "The pad has no zero.", Remedy = "Empty the pads and take a zero." } } });
        var step = For(loads);
        Assert.Equal("Empty the pads and take a zero.", step.Do);
        Assert.Equal("LF, RF and LR: The pad has no zero. (SL-341)", step.Why);
    }

    [Fact]
    public void A_raised_car_comes_with_its_caution() => Assert.Contains("Nobody under a car", For(new Loads { Verdict = Verdict.Raised }).Caution);

    private static NextStep For(Loads loads) => NextStep.For(new BayView(new(Freshness.Live, loads, TimeSpan.Zero), new(Freshness.Absent), new(Freshness.Absent), null), Unit.Kilogram);

    private static Loads Settled(double cross) => new()
    {
        Verdict = Verdict.Settled,
        TotalKg = new MeasuredValue { Estimate = 1048, StandardUncertainty = 0.1 },
        CrossWeightPercent = new MeasuredValue { Estimate = cross, StandardUncertainty = 0.02 },
        Target = new Target { CrossWeightPercent = 50, TolerancePercent = 0.2 },
    };
}
