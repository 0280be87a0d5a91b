using CsCheck;
using ScaleLink.Measure;
using ScaleLink.Weighing.PadInterchange;

namespace Weighing.Tests.PadInterchange;

/// <summary>No published source: a car and pads of known truth.</summary>
public class InterchangeEvaluationTests
{
    static readonly string[] Pads = ["P1", "P2", "P3", "P4"];
    static readonly Corners Car = new(281, 268, 247, 252);

    [Fact]
    public void Gains_come_out_whatever_the_car_weighs_and_however_it_settles() =>
        Gen.Select(Gen.Double[-0.004, 0.004].Array[4], Gen.Double[-3, 3].Array[4], Gen.Double[200, 350].Array[4]).Sample((gains, warps, loads) =>
        {
            var car = new Corners(loads[0], loads[1], loads[2], loads[3]);
            var result = InterchangeEvaluation.Evaluate(Weigh(InterchangeEvaluation.Placements(Pads), car, gains, warps, 0, 1));
            var mean = gains.Average();
            // Product terms of gain and warp, both small, are left out of the model: 0.004 x 3 kg in 300.
            for (var i = 0; i < 4; i++)
                Assert.Equal(gains[i] - mean, result.Gains.Single(g => g.Pad == Pads[i]).Relative, 1.5e-4);
        });

    [Fact]
    public void The_stated_uncertainty_holds()
    {
        double[] gains = [0.001, -0.0005, 0.0012, -0.0017];
        var inside = 0;
        for (var seed = 0; seed < 300; seed++)
        {
            var result = InterchangeEvaluation.Evaluate(Weigh(InterchangeEvaluation.Placements(Pads), Car, gains, [0.4, -0.2, 0.1, -0.5], 0.05, seed));
            var k = ScaleLink.Measure.Coverage.Factor(result.DegreesOfFreedom);
            inside += result.Gains.Index().Count(g => Math.Abs(g.Item.Relative - gains[g.Index]) < k * g.Item.StandardUncertainty);
        }
        // 95 % of 1200; the four of one trial are not independent.
        Assert.InRange(inside / 1200.0, 0.92, 0.98);
    }

    [Fact]
    public void An_error_that_all_pads_share_is_not_seen_and_that_is_said()
    {
        var result = InterchangeEvaluation.Evaluate(Weigh(InterchangeEvaluation.Placements(Pads), Car, [0.01, 0.01, 0.01, 0.01], [0, 0, 0, 0], 0, 1));
        Assert.All(result.Gains, g => Assert.Equal(0, g.Relative, 1e-9));
        Assert.Contains(InterchangeResult.CannotSee, text => text.Contains("all four pads share", StringComparison.Ordinal));
    }

    [Fact]
    public void Interchanged_in_a_ring_the_diagonals_cannot_be_told_from_warp()
    {
        // LF to RF to RR to LR: the pads of a diagonal stay on a diagonal.
        string[][] ring = [["P1", "P2", "P4", "P3"], ["P4", "P1", "P3", "P2"], ["P3", "P4", "P2", "P1"], ["P2", "P3", "P1", "P4"]];
        Assert.Equal("SL-322", Refused(Weigh(ring, Car, [0, 0, 0, 0], [0, 0, 0, 0], 0.05, 1)));
    }

    [Fact]
    public void Two_placements_are_too_few() =>
        Assert.Equal("SL-322", Refused([.. Weigh(InterchangeEvaluation.Placements(Pads), Car, [0, 0, 0, 0], [0, 0, 0, 0], 0.05, 1).Take(2)]));

    [Fact]
    public void A_strange_pad_is_refused() =>
        Assert.Equal("SL-322", Refused(Weigh([["P1", "P2", "P3", "P3"]], Car, [0, 0, 0, 0], [0, 0, 0, 0], 0, 1)));

    [Fact]
    public void A_driver_who_gets_out_half_way_is_noticed()
    {
        var placements = Weigh(InterchangeEvaluation.Placements(Pads), Car, [0, 0, 0, 0], [0, 0, 0, 0], 0.05, 1);
        placements[2] = placements[2] with { LoadsKg = placements[2].LoadsKg - new Corners(22, 14, 24, 16) };
        Assert.Equal("SL-323", Refused(placements));
    }

    static string Refused(List<PadPlacement> placements) => Assert.Throws<RefusedException>(() => InterchangeEvaluation.Evaluate(placements)).Diagnostic.Code;

    static List<PadPlacement> Weigh(IReadOnlyList<IReadOnlyList<string>> placements, Corners car, double[] gains, double[] warps, double noise, int seed)
    {
        var random = new Random(seed);
        var normal = new Weighing.Tests.Calibration.Coverage.SimulatedPad(random);
        return [.. placements.Select((padAt, r) => new PadPlacement(padAt, Corners.From(corner =>
        {
            var warp = corner is Corner.LF or Corner.RR ? warps[r] : -warps[r];
            var gain = gains[Array.IndexOf(Pads, padAt[(int)corner])];
            return (car[corner] + warp) * (1 + gain) + noise * normal.Normal();
        })))];
    }
}
