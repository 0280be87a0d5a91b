using CarOnPads.Physics;

namespace CarOnPads.Tests.Physics;

/// <summary>Two programs for one car: time stepping and Newton's method must find the same rest.</summary>
public class TruthTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Without_friction_the_car_comes_to_rest_at_the_static_solution(int seed)
    {
        var rig = new Rig(Cars.Heron, Cars.G, seed);
        Work(rig, new NoiseSource(seed, "work"));
        var truth = StaticTruth.Of(rig).Load;
        Cars.Run(rig, 25);
        AssertSame(truth, rig.Motion.Load, 1e-3);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    public void With_friction_the_truth_is_told_while_the_crew_still_bounces_the_car(int seed)
    {
        var rig = Rubbing(seed);
        Work(rig, new NoiseSource(seed, "work"));
        rig.RollThenBounce(2, 400, 2);
        Cars.Run(rig, 1.3);
        var truth = StaticTruth.Of(rig).Load;
        Cars.Run(rig, 40);
        AssertSame(truth, rig.Motion.Load, 0.01);
    }

    [Fact]
    public void Asking_for_the_truth_leaves_the_car_alone()
    {
        var (asked, left) = (Rubbing(9), Rubbing(9));
        foreach (var rig in new[] { asked, left })
            rig.RollThenBounce(1, 400, 1);
        for (var i = 0; i < 4; i++)
        {
            _ = StaticTruth.Of(asked);
            Cars.Run(asked, 0.4);
            Cars.Run(left, 0.4);
        }

        Assert.Equal(left.Motion.Load.ToArray(), asked.Motion.Load.ToArray());
        Assert.Equal(left.Contact, asked.Contact);
    }

    // The sizes stand in docs/simulator.md: about 0.1 % of cross weight after rolling and bouncing.
    [Fact]
    public void Every_settling_leaves_another_warp_of_the_stated_size()
    {
        var rig = Rubbing(11);
        var settled = new List<double>();
        for (var i = 0; i < 40; i++)
        {
            Cars.Run(rig, rig.RollThenBounce(1.5, 400, 1.5) - rig.Time + 0.1);
            settled.Add(Cars.CrossWeight(StaticTruth.Of(rig)));
        }

        var mean = settled.Average();
        var deviation = Math.Sqrt(settled.Sum(c => (c - mean) * (c - mean)) / (settled.Count - 1));
        Assert.InRange(deviation, 0.05, 0.2);
        Assert.Equal(Cars.CrossWeight(new Rig(Cars.Heron, Cars.G, 1).Motion), mean, 0.1);
    }

    [Fact]
    public void Without_friction_settling_changes_nothing()
    {
        var rig = new Rig(Cars.Heron, Cars.G, 1);
        var before = Cars.CrossWeight(rig.Motion);
        Cars.Run(rig, rig.RollThenBounce(1.5, 400, 1.5));
        Assert.Equal(before, Cars.CrossWeight(StaticTruth.Of(rig)), 1e-9);
    }

    [Fact]
    public void A_lean_shows_while_it_lasts_and_is_gone_afterwards()
    {
        var rig = new Rig(Cars.Heron, Cars.G, 1);
        rig.Lean(Wheel.LF, 20 * Cars.G, double.PositiveInfinity);
        Assert.Equal(1068, Cars.Kilograms(StaticTruth.Of(rig)).Sum, 1e-6);
        rig.Lean(Wheel.LF, 20 * Cars.G, rig.Time + 2);
        Cars.Run(rig, 1);
        Assert.InRange(Cars.Kilograms(rig.Motion).Sum, 1058, 1078);
        Assert.Equal(1048, Cars.Kilograms(StaticTruth.Of(rig)).Sum, 1e-6);
    }

    static Rig Rubbing(int seed) => new(Cars.Heron, Cars.G, seed) { Rubs = true, Scrubs = true, RunsOut = true };

    static void Work(Rig rig, NoiseSource noise)
    {
        foreach (var wheel in Enum.GetValues<Wheel>())
        {
            rig.Turn(wheel, noise.Uniform(-2, 2));
            rig.PadHeight(wheel, noise.Uniform(-0.003, 0.003));
        }

        rig.Ballast([new PlacedMass(noise.Uniform(0, 30), 0.8, -0.4, 0.3)]);
        rig.Bars(noise.Uniform(0, 1) > 0.5, noise.Uniform(0, 1) > 0.5);
        rig.Seat(noise.Uniform(0, 1) > 0.5);
        rig.Bounce(Four.Same(1), 300, 1);
    }

    static void AssertSame(in Four expected, in Four actual, double newtons)
    {
        foreach (var wheel in Enum.GetValues<Wheel>())
            Assert.Equal(expected[wheel], actual[wheel], newtons);
    }
}
