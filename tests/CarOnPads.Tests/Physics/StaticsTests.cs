using System.Text.Json;
using CarOnPads.Physics;
using CsCheck;
using Shared;

namespace CarOnPads.Tests.Physics;

/// <summary>The static solution against closed forms that know nothing of it.</summary>
public class StaticsTests
{
    static readonly Gen<double> s_mm = Gen.Double[-8, 8];

    [Fact]
    public void Whatever_is_turned_raised_or_loaded_the_pads_carry_the_weight() =>
        Gen.Select(s_mm, s_mm, s_mm, Gen.Double[0, 60], Gen.Bool).Sample((height, turns, more, ballast, bars) =>
        {
            var rig = new Rig(Cars.Heron, Cars.G, 1);
            rig.PadHeight(Wheel.RF, height * 1e-3);
            rig.PadHeight(Wheel.LR, more * 1e-3);
            rig.Turn(Wheel.LF, turns / 4);
            rig.Ballast([new PlacedMass(ballast, 0.7, -0.4, 0.3)]);
            rig.Bars(bars, !bars);
            rig.RestAtOnce();
            Assert.Equal(1048 + ballast, Cars.Kilograms(rig.Motion).Sum, 1e-6);
        }, iter: 200, seed: "0000000000001");

    // Derived: warp e at one wheel of a rectangle, four springs in parallel against it. Textbook statics of a table
    // on four springs; each corner changes by e / sum(1/k), in the pattern + - - +.
    [Theory]
    [InlineData(Wheel.LF)]
    [InlineData(Wheel.RR)]
    internal void A_raised_pad_shifts_every_corner_by_the_height_over_the_sum_of_compliances(Wheel raised)
    {
        const double e = 0.003;
        var rig = new Rig(Cars.Massless, Cars.G, 1);
        var before = rig.Motion.Load;
        rig.PadHeight(raised, e);
        rig.RestAtOnce();
        var compliance = 0.0;
        foreach (var at in rig.Chassis.Stations)
            compliance += 1 / Cars.RideRate(at);
        AssertPattern(e / compliance, before, rig.Motion.Load);
    }

    // The same statics: the perch changes the free length at the wheel by travel / motion ratio
    // (motion ratio = spring travel / wheel travel).
    [Fact]
    public void A_turned_perch_acts_as_its_travel_over_the_motion_ratio()
    {
        var rig = new Rig(Cars.Massless, Cars.G, 1);
        var before = rig.Motion.Load;
        rig.Turn(Wheel.LF, 1.5);
        rig.RestAtOnce();
        var compliance = 0.0;
        foreach (var at in rig.Chassis.Stations)
            compliance += 1 / Cars.RideRate(at);
        AssertPattern(1.5 * 0.002 / 0.85 / compliance, before, rig.Motion.Load);
    }

    [Fact]
    public void Turning_perches_moves_no_axle_and_no_side_of_a_rectangular_car()
    {
        var rig = new Rig(Cars.Massless, Cars.G, 1);
        var before = rig.Motion.Load;
        rig.Turn(Wheel.RF, 2);
        rig.Turn(Wheel.LR, -0.7);
        rig.RestAtOnce();
        var after = rig.Motion.Load;
        Assert.Equal(before[Wheel.LF] + before[Wheel.RF], after[Wheel.LF] + after[Wheel.RF], 1e-6);
        Assert.Equal(before[Wheel.LF] + before[Wheel.LR], after[Wheel.LF] + after[Wheel.LR], 1e-6);
        Assert.True(Math.Abs(after[Wheel.RF] - before[Wheel.RF]) > 20);
    }

    // R. N. Jazar, Vehicle Dynamics: Theory and Application, Example 40, and lecture slides after its chapter 2:
    // tests/reference/vehicle-dynamics.json, static_examples 0 and 1.
    [Theory]
    [InlineData(0, 2.34, 774.71967, 1.2316 / 2.34, 2000, 1800, 0.2)]
    [InlineData(1, 2.35, 890, 1 - 0.78 / 2.35, 2916.5, 1449, 0.1)]
    public void Published_examples_of_wheel_loads_come_out(
        int example, double wheelbase, double mass, double frontWeight, double front, double rear, double tolerance)
    {
        using var reference = JsonDocument.Parse(RepositoryRoot.Read("tests", "reference", "vehicle-dynamics.json"));
        var entry = reference.RootElement.GetProperty("static_examples")[example];
        Assert.Equal(wheelbase, entry.GetProperty("inputs").GetProperty("L_m").GetDouble());
        var published = example == 0 ? entry.GetProperty("inputs") : entry.GetProperty("results");
        Assert.Equal(front, published.GetProperty("F_each_front_N").GetDouble());
        Assert.Equal(rear, published.GetProperty("F_each_rear_N").GetDouble());

        var car = Cars.Square with { WheelbaseM = wheelbase, MassKg = mass, FrontWeight = frontWeight };
        var load = new Rig(car, 9.81, 1).Motion.Load;
        Assert.Equal(front, load[Wheel.LF], tolerance);
        Assert.Equal(front, load[Wheel.RF], tolerance);
        Assert.Equal(rear, load[Wheel.LR], tolerance);
        Assert.Equal(rear, load[Wheel.RR], tolerance);
    }

    // Jazar eq. (2.44), (2.45): a slope s moves h s / L of the weight to the lower axle. The springs let the body
    // lean a little further than the pads do, so the shift is somewhat larger: never smaller, never by 10 %.
    [Fact]
    public void A_nose_up_slope_moves_load_rearward_by_height_times_slope_over_wheelbase()
    {
        const double rise = 0.05;
        var car = Cars.Square with { CgHeightM = 0.5 };
        var rig = new Rig(car, Cars.G, 1);
        rig.PadHeight(Wheel.LF, rise);
        rig.PadHeight(Wheel.RF, rise);
        rig.RestAtOnce();
        var load = rig.Motion.Load;
        var moved = load[Wheel.LR] + load[Wheel.RR] - 500 * Cars.G;
        var unsprung = rig.Chassis.Stations[0].UnsprungMass * 4;
        var heightMoment = (1000 - unsprung) * 0.5 + rig.Chassis.UnsprungHeightMoment;
        var expected = Cars.G * heightMoment * (rise / car.WheelbaseM) / car.WheelbaseM;
        Assert.InRange(moved / expected, 1.0, 1.1);
    }

    static void AssertPattern(double size, in Four before, in Four after)
    {
        Assert.Equal(size, after[Wheel.LF] - before[Wheel.LF], 1e-6);
        Assert.Equal(-size, after[Wheel.RF] - before[Wheel.RF], 1e-6);
        Assert.Equal(-size, after[Wheel.LR] - before[Wheel.LR], 1e-6);
        Assert.Equal(size, after[Wheel.RR] - before[Wheel.RR], 1e-6);
    }
}
