using CsCheck;
using ScaleLink.Measure;
using ScaleLink.Weighing.Settling.RockingBlind;
using Weighing.Tests.Settling.Scenarios;

namespace Weighing.Tests.Settling.RockingBlind;

/// <summary>Statics of a rigid body on four springs, derived; no published source.</summary>
public class BlindDirectionTests
{
    static readonly Corners Warp = new(1, -1, -1, 1);
    static readonly Corners Noise = Corners.Same(.01);
    static readonly Corners Settled = new(301, 255, 248, 244);

    [Fact]
    public void Any_rigid_motion_leaves_cross_weight_alone_and_warp_is_read_in_full() =>
        Gen.Select(Gen.Double[15, 60].Array[4], Gen.Double[-8, 8], Gen.Double[-5, 5], Gen.Double[-5, 5], Gen.Double[-20, 20])
            .Sample((rates, heave, pitch, roll, warp) =>
            {
                var rate = new Corners(rates[0], rates[1], rates[2], rates[3]);
                var blind = new RockingBlindCrossWeight(Model(rate));
                blind.Refer(Settled, Noise);
                var moved = Settled + RigidMotion(rate, heave, pitch, roll) + warp * Warp;

                var seen = blind.Add(moved, Noise)!.Value.Estimate;

                var turned = Settled + warp * Warp;
                Assert.Equal(100 * (turned.RF + turned.LR) / turned.Sum, seen, 1e-9);
            });

    [Fact]
    public void Bounces_teach_the_rates_and_their_noise_is_counted()
    {
        var rate = new Corners(40, 44, 30, 26);
        var learner = new RockingLearner();
        foreach (var seed in new[] { 1, 2, 3 }) Bounce(learner, rate, seed, size: 1);

        var learned = learner.Learn(BlindDirection.Unknown(Warp));

        Assert.NotNull(learned);
        Assert.Equal(3, learner.Bounces);
        var truth = 4 / rate.Sum * rate;
        foreach (var corner in Corners.All)
        {
            Assert.Equal(truth[corner], learned.RideRateRatios[corner], .01);
            Assert.True(learned.RelativeUncertainty[corner] < .01);
        }
    }

    [Fact]
    public void A_faint_bounce_teaches_nothing_and_the_model_stays()
    {
        var model = Model(new(40, 40, 30, 30));
        var learner = new RockingLearner();
        Bounce(learner, new(40, 44, 30, 26), 4, size: .00005);

        Assert.Null(learner.Learn(model));
        foreach (var corner in Corners.All)
            Assert.Equal(model.RideRateRatios[corner], learner.Join(model).RideRateRatios[corner], .01);
    }

    [Fact]
    public void A_warp_that_moves_by_itself_is_not_taken_for_rocking()
    {
        var learner = new RockingLearner();
        var draw = new Draw(5);
        for (var k = 0; k < 80; k++) learner.Add(Settled + RigidMotion(new(40, 44, 30, 26), Wave(k, 1), Wave(k, 2), Wave(k, 3)) + 3 * draw.Normal() * Warp);
        learner.Finish(Settled, Noise);
        Assert.Null(learner.Learn(BlindDirection.Unknown(Warp)));
    }

    [Fact]
    public void Nothing_is_said_without_a_reference_and_a_dropped_bounce_leaves_no_trace()
    {
        var model = Model(Corners.Same(30));
        Assert.Null(new RockingBlindCrossWeight(model).Add(Settled, Noise));

        var learner = new RockingLearner();
        learner.Add(Settled);
        learner.Drop();
        learner.Finish(Settled, Noise);
        Assert.Equal(0, learner.Blocks);
        Assert.Same(model, learner.Join(model));
    }

    [Fact]
    public void Joined_by_uncertainty_unless_they_contradict_each_other()
    {
        var joined = CombinedCrossWeight.Of(new Value(50, .03), new Value(50.05, .04))!.Value;
        // Weights 16 : 9, uncertainty of two independent values.
        Assert.Equal((16 * 50 + 9 * 50.05) / 25, joined.Estimate, 9);
        Assert.Equal(.024, joined.StandardUncertainty!.Value, 9);

        Assert.Equal(new Value(50, .01), CombinedCrossWeight.Of(new Value(50, .01), new Value(51, .02)));
        Assert.Equal(new Value(51, .02), CombinedCrossWeight.Of(new Value(50, null), new Value(51, .02)));
        Assert.Equal(new Value(50, .01), CombinedCrossWeight.Of(new Value(50, .01), null));
        Assert.Null(CombinedCrossWeight.Of(null, null));
    }

    [Fact]
    public void Refuses_what_is_no_model_and_no_car()
    {
        var uncertain = Corners.Same(.1);
        Assert.Throws<ArgumentOutOfRangeException>(() => BlindDirection.FromModel(new(1, 1, 0, 1), uncertain, Warp));
        Assert.Throws<ArgumentOutOfRangeException>(() => BlindDirection.FromModel(Corners.Same(1), default, Warp));
        Assert.Throws<ArgumentOutOfRangeException>(() => BlindDirection.FromModel(Corners.Same(1), uncertain, Corners.Same(1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => BlindDirection.FromModel(Corners.Same(1), uncertain, default));
        Assert.Throws<ArgumentOutOfRangeException>(() => new RockingBlindCrossWeight(Model(Corners.Same(1))).Refer(default, Noise));
    }

    static BlindDirection Model(Corners rate) => BlindDirection.FromModel(rate.Map(r => 1 / r), Corners.Same(.1), Warp);

    /// <summary>Load changes of a rigid body on springs, contacts at (±1, ±1).</summary>
    static Corners RigidMotion(Corners rate, double heave, double pitch, double roll) => new(
        rate.LF * (heave + pitch + roll), rate.RF * (heave + pitch - roll),
        rate.LR * (heave - pitch + roll), rate.RR * (heave - pitch - roll));

    static void Bounce(RockingLearner learner, Corners rate, int seed, double size)
    {
        var draw = new Draw(seed);
        for (var k = 0; k < 80; k++)
            learner.Add(Settled + size * RigidMotion(rate, Wave(k, 1), Wave(k, 2), Wave(k, 3)) + Corners.From(_ => .01 * draw.Normal()));
        learner.Finish(Settled, Noise);
    }

    static double Wave(int k, int which) => Math.Exp(-.02 * k) * Math.Cos((.4 + .13 * which) * k + which);
}
