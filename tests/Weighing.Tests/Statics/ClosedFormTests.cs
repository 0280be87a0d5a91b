using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Statics;
using Weighing.Tests.Cars;

namespace Weighing.Tests.Statics;

/// <summary>Textbook statics, derived here: two force and moment balances and the flatness of the body.</summary>
public class ClosedFormTests
{
    const double G = CarStatics.StandardGravity;
    static readonly Corners Unequal = new(40, 55, 30, 70);

    static double RideCompliance(double spring, double tyre = 200) => G * (1 / spring + 1 / tyre);

    [Theory]
    [InlineData(Corner.LF, 1)]
    [InlineData(Corner.RF, -1)]
    [InlineData(Corner.LR, -1)]
    [InlineData(Corner.RR, 1)]
    public void A_raised_pad_loads_its_own_diagonal_by_height_over_summed_compliance(Corner raised, int sign)
    {
        var statics = new CarStatics(PlainCar.With(Unequal), 1000);
        var e = 4.0;
        var expected = e / Unequal.Map(k => RideCompliance(k)).Sum;

        var change = statics.FromPads(default(Corners).With(raised, e));

        Near(expected * sign * new Corners(1, -1, -1, 1), change);
    }

    [Fact]
    public void Reference_value_of_a_raised_pad()
    {
        // tests/reference/vehicle-dynamics.json, pad_height_and_cross_weight: DERIVED there, not published.
        var check = ReferenceFile.Json("vehicle-dynamics.json").GetProperty("pad_height_and_cross_weight").GetProperty("check");
        var rideRate = check.GetProperty("k_N_per_mm").GetDouble();
        var tyre = 200.0;
        var spring = 1 / (1 / rideRate - 1 / tyre);
        var statics = new CarStatics(PlainCar.With(Corners.Same(spring), tyre), 1000);

        var newtons = G * statics.FromPads(new(check.GetProperty("d_mm").GetDouble(), 0, 0, 0)).LF;

        Assert.Equal(check.GetProperty("dF_N").GetDouble(), newtons, 9);
    }

    [Fact]
    public void Warp_leaves_every_axle_and_side_sum_alone_at_equal_tracks()
    {
        var change = new CarStatics(PlainCar.With(Unequal), 1000).FromBuiltInWarp(10);

        Assert.True(change.LF > 1);
        Assert.Equal(0, change.LF + change.RF, 9);
        Assert.Equal(0, change.LR + change.RR, 9);
        Assert.Equal(0, change.LF + change.LR, 9);
    }

    [Fact]
    public void Warp_leaves_only_the_axle_sums_alone_at_unequal_tracks()
    {
        var change = new CarStatics(PlainCar.With(Unequal, frontTrack: 1600, rearTrack: 1400), 1000).FromBuiltInWarp(10);

        Assert.Equal(0, change.LF + change.RF, 9);
        Assert.Equal(0, change.LR + change.RR, 9);
        // No roll moment: front difference times front track balances rear difference times rear track.
        Assert.Equal(1600 * change.LF, -1400 * change.LR, 6);
        Assert.True(Math.Abs(change.LF + change.LR) > 0.1);
    }

    [Fact]
    public void Nose_up_slope_moves_height_times_tangent_over_wheelbase_to_the_rear()
    {
        var statics = new CarStatics(PlainCar.With(Corners.Same(50), cgHeight: 400), 1000);
        var tangent = Math.Tan(1 * Math.PI / 180);

        var change = statics.FromPads(new(2400 * tangent, 2400 * tangent, 0, 0));

        Assert.Equal(-1000 * 400 * tangent / 2400, change.LF + change.RF, 9);
        Assert.Equal(0, change.LF + change.LR, 9);
    }

    [Fact]
    public void Slope_agrees_with_the_inclined_car_of_the_textbook()
    {
        // Jazar, Vehicle Dynamics, eq. (2.44), (2.45), VERIFIED in vehicle-dynamics.json: per wheel, nose up by phi,
        // F = (m g / 2)(a2/l cos phi - h/l sin phi) in front. It gives forces square to the slope: shares follow.
        double m = 1200, l = 2400, a1 = 1100, h = 450, phi = 1.5 * Math.PI / 180;
        var front = m / 2 * ((l - a1) / l * Math.Cos(phi) - h / l * Math.Sin(phi));
        var rear = m / 2 * (a1 / l * Math.Cos(phi) + h / l * Math.Sin(phi));
        var statics = new CarStatics(PlainCar.With(Corners.Same(50), cgHeight: h), m);

        var loads = statics.Loads(new(m, -a1, 0, 0), new(l * Math.Tan(phi), l * Math.Tan(phi), 0, 0));

        Assert.Equal(front / (front + rear), loads.LF / (loads.LF + loads.LR), 9);
    }

    [Fact]
    public void Equal_rates_keep_cross_weight_on_a_slope()
    {
        var statics = new CarStatics(PlainCar.With(Corners.Same(50), cgHeight: 450), 1000);

        var change = statics.FromPads(new(20, 12, 8, 0));

        Assert.Equal(0, change.RF + change.LR, 9);
        Assert.True(Math.Abs(change.LF) > 1);
    }

    [Fact]
    public void A_connected_bar_stiffens_warp_by_its_share()
    {
        // Rectangle, four equal springs k, tyres t, one bar b a end: opposite wheels see k + 2b.
        double k = 40, t = 200, b = 15;
        var car = PlainCar.With(Corners.Same(k), t) with
        {
            FrontBar = new(Stated.Exactly(b), Connected: true),
            RearBar = new(Stated.Exactly(b), Connected: true),
        };
        var statics = new CarStatics(car, 1000);

        Assert.Equal(4 / (4 * G * (1 / (k + 2 * b) + 1 / t)), statics.FromPads(new(4, 0, 0, 0)).LF, 9);
        // The perch works against the bar too: of one mm, k / (k + 2b) is left as twist and half of it per wheel.
        Assert.Equal(2.0 * k / (k + 2 * b) / (4 * G * (1 / (k + 2 * b) + 1 / t)), statics.FromTurns(new(1, 0, 0, 0)).LF, 9);
        Near(new CarStatics(PlainCar.With(Corners.Same(k), t), 1000).LoadsPerTurn.LF,
            new CarStatics(car.WithBars(connected: false), 1000).LoadsPerTurn.LF);
    }

    [Fact]
    public void A_perch_travels_at_the_wheel_by_pitch_over_motion_ratio()
    {
        var car = PlainCar.With(Corners.Same(50)).Change(Corner.LR, s => s with { MotionRatio = Stated.Exactly(0.7), SpringRateNPerMm = Stated.Exactly(50 / 0.49) });
        var statics = new CarStatics(car, 1000);

        Near(2 / 0.7 / (4 * RideCompliance(50)) * new Corners(-1, 1, 1, -1), statics.FromTurns(new(0, 0, 1, 0)));
    }

    [Fact]
    public void Raising_all_four_perches_alike_raises_the_body_and_moves_no_load()
    {
        var statics = new CarStatics(PlainCar.With(Corners.Same(50)), 1000);

        Near(default, statics.FromTurns(Corners.Same(1)));
        Near(Corners.Same(2), statics.HeightsFromTurns(Corners.Same(1)));
    }

    [Fact]
    public void Turns_cannot_move_the_centre_of_gravity()
    {
        var statics = new CarStatics(PlainCar.With(Unequal), 1000);
        var before = new Stance(1000, -1150, 12, 3);

        var after = statics.StanceBehind(statics.Loads(before, turns: new(2, -1, 0.5, 3)));

        Assert.Equal(before.CgX, after.CgX, 8);
        Assert.Equal(before.CgY, after.CgY, 8);
        Assert.NotEqual(before.BuiltInWarpMm, after.BuiltInWarpMm, 1);
    }

    static void Near(Corners expected, Corners actual)
    {
        foreach (var corner in Corners.All)
            Assert.Equal(expected[corner], actual[corner], 9);
    }
}
