using MathNet.Numerics.Distributions;
using ScaleLink.Weighing.Balance;

namespace Weighing.Tests.Balance;

public class CgHeightTests
{
    static AxleLiftSetup Setup(double wheelbase, double front, double rear, double frontRadius = 300, double rearRadius = 300) =>
        new(new(wheelbase, 2), new(frontRadius, 2), new(rearRadius, 2), new(front, 0.3), new(rear, 0.3));

    [Fact]
    public void Round_trip_of_the_reference_file()
    {
        // vehicle-dynamics.json, consistent_round_trip: DERIVED there. (The example printed in the book contradicts its own formula.)
        var inputs = ReferenceFile.Json("vehicle-dynamics.json").GetProperty("cg_height_axle_lift").GetProperty("consistent_round_trip");
        double Input(string name) => inputs.GetProperty("inputs").GetProperty(name).GetDouble();
        double m = Input("m_kg"), l = 1000 * Input("l_m"), a = 1000 * Input("a1_m"), r = 1000 * Input("R_m");

        var height = CgHeight.From(Setup(l, m * (l - a) / l, m * a / l, r, r),
            [new(Axle.Rear, new(inputs.GetProperty("2Fz1_N").GetDouble() / Input("g"), 0.3), new(Input("phi_deg"), 0.05))]);

        Assert.Equal(1000 * Input("h_m"), height.HeightMm.Estimate, 0.01);
    }

    [Theory]
    [InlineData(Axle.Rear, 300, 300)]
    [InlineData(Axle.Rear, 290, 325)]
    [InlineData(Axle.Front, 290, 325)]
    [InlineData(Axle.Front, 320, 295)]
    internal void A_car_turned_point_by_point_gives_its_height_back(Axle lifted, double frontRadius, double rearRadius)
    {
        double l = 2450, w = 1048, behind = 1150, h = 455;
        var setup = Setup(l, w * (l - behind) / l, w * behind / l, frontRadius, rearRadius);
        List<AxleLift> lifts = [];
        foreach (var lift in new[] { 200.0, 350, 500 })
        {
            var (angle, load) = Raise(lifted, lift, l, w, behind, h, frontRadius, rearRadius);
            var byHeight = AxleLift.ByHeight(lifted, new(load, 0.3), new(lift, 1), setup);
            Assert.Equal(angle, byHeight.AngleDeg.Estimate, 1e-4);
            lifts.Add(byHeight);
            lifts.Add(AxleLift.ByInclinometer(lifted, new(load, 0.3), 0.4, 0.4 + angle, 0.05));
        }

        var height = CgHeight.From(setup, lifts);

        Assert.Equal(h, height.HeightMm.Estimate, 0.02);
        Assert.All(height.EachMm, each => Assert.Equal(h, each, 0.05));
    }

    [Fact]
    public void Stated_uncertainty_covers_drawn_measurements_of_both_axles()
    {
        var random = new Random(7801);
        double l = 2450, w = 1048, behind = 1150, h = 455;
        var covered = 0;
        const int runs = 1000;
        for (var i = 0; i < runs; i++)
        {
            double Off(double u) => Normal.Sample(random, 0, u);
            double baseOff = Off(2), frontOff = Off(2), rearOff = Off(2);
            var setup = new AxleLiftSetup(new(l + baseOff, 2), new(300 + frontOff, 2), new(300 + rearOff, 2), new(w * (l - behind) / l + Off(0.3), 0.3), new(w * behind / l + Off(0.3), 0.3));
            List<AxleLift> lifts = [];
            foreach (var lifted in (Axle[])[Axle.Front, Axle.Rear])
                foreach (var lift in new[] { 250.0, 400, 550 })
                {
                    var (angle, load) = Raise(lifted, lift, l, w, behind, h, 300, 300);
                    lifts.Add(new(lifted, new(load + Off(0.3), 0.3), new(angle + Off(0.1), 0.1)));
                }
            try
            {
                var height = CgHeight.From(setup, lifts).HeightMm;
                covered += Math.Abs(height.Estimate - h) <= height.Expanded ? 1 : 0;
            }
            catch (DiagnosticException)
            {
                // One honest series in a thousand is turned away; it counts as not covered.
            }
        }
        Assert.InRange(covered, 0.93 * runs, 0.97 * runs);
    }

    [Fact]
    public void Lifts_that_contradict_each_other_are_refused()
    {
        var setup = Setup(2450, 556, 492);
        AxleLift At(double kg, double deg) => new(Axle.Rear, new(kg, 0.3), new(deg, 0.05));

        var finding = Assert.Throws<DiagnosticException>(() => CgHeight.From(setup, [At(559, 5), At(562, 10), At(580, 12)])).Diagnostics[0];

        Assert.Equal(CarCodes.LiftsDisagree, finding.Code);
    }

    [Fact]
    public void Unusable_lifts_are_listed_all_at_once()
    {
        var found = Assert.Throws<DiagnosticException>(() => CgHeight.From(Setup(2450, 556, 492),
            [new(Axle.Rear, new(560, 0.3), new(1, 0.05)), new(Axle.Rear, new(1100, 0.3), new(8, 0.05)), new(Axle.Rear, new(560, 0), new(8, 0))])).Diagnostics;

        Assert.Equal(3, found.Count);
        Assert.All(found, f => Assert.Equal(CarCodes.LiftUnusable, f.Code));
        Assert.Throws<DiagnosticException>(() => CgHeight.From(Setup(2450, 556, 492), []));
    }

    [Fact]
    public void The_caution_names_stands_chocks_and_where_nobody_may_be()
    {
        Assert.Contains("stands", Cautions.AxleLift);
        Assert.Contains("Chock", Cautions.AxleLift);
        Assert.Contains("Nobody in, under", Cautions.AxleLift);
        Assert.Contains("local rules", Cautions.AxleLift);
    }

    // The car as points in its side plane, turned about the hubs that stay down until the lifted hubs are high enough.
    static (double AngleDeg, double OtherLoad) Raise(Axle lifted, double lift, double l, double w, double behind, double h, double frontRadius, double rearRadius)
    {
        (double X, double Z) front = (0, frontRadius), rear = (-l, rearRadius), cg = (-behind, h);
        var (pivot, far) = lifted == Axle.Rear ? (front, rear) : (rear, front);
        double low = 0, high = 0.7;
        for (var i = 0; i < 80; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Turned(far, middle).Z - far.Z < lift ? (middle, high) : (low, middle);
        }
        var (hub, centre) = (Turned(far, low), Turned(cg, low));
        var onLifted = w * (centre.X - pivot.X) / (hub.X - pivot.X);
        return (low * 180 / Math.PI, w - onLifted);

        (double X, double Z) Turned((double X, double Z) p, double angle)
        {
            // Behind the pivot a lift turns nose down, before it nose up.
            var t = lifted == Axle.Rear ? -angle : angle;
            var (dx, dz) = (p.X - pivot.X, p.Z - pivot.Z);
            return (pivot.X + dx * Math.Cos(t) - dz * Math.Sin(t), pivot.Z + dx * Math.Sin(t) + dz * Math.Cos(t));
        }
    }
}
