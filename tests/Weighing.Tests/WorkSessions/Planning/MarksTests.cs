using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Cars.Files;
using ScaleLink.Weighing.Statics;
using ScaleLink.Weighing.WorkSessions.Planning;
using Shared;
using Weighing.Tests.Cars;

namespace Weighing.Tests.WorkSessions.Planning;

/// <summary>Ride heights at marks anywhere on the body: the plan keeps what that means at the wheels. Interpolation on a plane; common practice, no published source.</summary>
public class MarksTests
{
    [Fact]
    public void Marks_at_a_quarter_and_three_quarters_give_the_plan_of_marks_at_the_wheels() => Gen.Int[0, int.MaxValue - 1].Sample(seed =>
    {
        var random = new Random(seed);
        var plain = PlanCases.Draw(random, smallestTurn: 0.125, thread: 8);
        var car = WithoutLimits(plain.Known.Effects.Statics.Car);
        // A body that pitches, rolls and stands at some height, and where it should stand.
        var (now, wanted) = (Plane(random, car), Plane(random, car));
        var (wheelbase, half) = (car.WheelbaseMm.Estimate, car.FrontTrackMm.Estimate / 2);
        var marked = car with { RideHeightMarks = Marks((0.25 * wheelbase, 0.6 * half), (0.25 * wheelbase, -0.6 * half), (0.75 * wheelbase, 0.6 * half), (0.75 * wheelbase, -0.6 * half)) };

        var atWheels = PerchPlanner.Plan(PlanCases.Ask(With(car, wanted), plain.Known.Last.Loads, At(now, Contacts.Of(car))));
        var atMarks = PerchPlanner.Plan(PlanCases.Ask(With(marked, wanted), plain.Known.Last.Loads, At(now, BodyPlane.MarksOf(marked))));
        Same(atWheels, atMarks);
    }, iter: 40);

    [Fact]
    public void Marks_at_the_wheels_change_nothing() => Gen.Int[0, int.MaxValue - 1].Sample(seed =>
    {
        var plain = PlanCases.Draw(new Random(seed), smallestTurn: 0.125, thread: 8);
        var car = plain.Known.Effects.Statics.Car;
        var contacts = Contacts.Of(car);
        var marked = car with { RideHeightMarks = new(new(-contacts.X.LF, contacts.Y.LF), new(-contacts.X.RF, contacts.Y.RF), new(-contacts.X.LR, contacts.Y.LR), new(-contacts.X.RR, contacts.Y.RR)) };
        Same(PerchPlanner.Plan(plain), PerchPlanner.Plan(PlanCases.Ask(marked, plain.Known.Last.Loads, plain.RideHeightsMm)));
    }, iter: 40);

    [Fact]
    public void Rake_and_its_tolerance_are_those_at_the_marks()
    {
        // Own working: marks half a wheelbase apart see half the rake. 3 mm at the marks asked for, 5 mm there: 4 mm too much at the wheels.
        var (wheelbase, half) = (Heron.Car.WheelbaseMm.Estimate, Heron.Car.FrontTrackMm.Estimate / 2);
        var car = Heron.Car with
        {
            RideHeightMarks = Marks((0.25 * wheelbase, half), (0.25 * wheelbase, -half), (0.75 * wheelbase, half), (0.75 * wheelbase, -half)),
            Targets = Heron.Car.Targets with { RakeMm = 3, RakeToleranceMm = 0.5, RideHeightToleranceMm = 2 },
        };
        var targets = TargetsAtWheels.Of(car.Targets, car, new(90, 90, 95, 95));
        Assert.Equal(1, targets.RakeToleranceMm!.Value, 1e-9);
        Assert.Equal(6, targets.RakeMm!.Value, 1e-9);
        var plan = PerchPlanner.Plan(PlanCases.Ask(car, Heron.Loads, new(90, 90, 95, 95)));
        Assert.Equal(4, plan.Now.RakeMm, 1e-9);
        Assert.True(plan.Reaches && Math.Abs(plan.After.RakeMm) <= 1, plan.Words);
        // A tolerance of rake alone binds rake alone.
        Assert.False(PlanObjective.WithinTolerance(new(0, 0, 1.01, 0), targets));
        Assert.True(PlanObjective.WithinTolerance(new(0, 1.9, 0.99, -1.9), targets));
    }

    [Fact]
    public void Where_marks_are_not_mirrored_the_body_still_turns_so_that_both_targets_are_met_at_the_marks() => Gen.Int[0, int.MaxValue - 1].Sample(seed =>
    {
        var random = new Random(seed);
        double U(double low, double high) => low + (high - low) * random.NextDouble();
        var car = Heron.Car with { RideHeightMarks = Marks((U(-300, 500), U(400, 800)), (U(-300, 500), U(-800, -400)), (U(1500, 2600), U(400, 800)), (U(1500, 2600), U(-800, -400))) };
        var (marks, wheels) = (BodyPlane.MarksOf(car), Contacts.Of(car));
        var heights = At(Plane(random, car), marks);
        var targets = TargetsAtWheels.Of(car.Targets with { RakeMm = U(-20, 20), LeftRightDifferenceMm = U(-10, 10) }, car, heights);
        // The plane at the wheels that has these two: its heights at the marks must have what was asked for there.
        var slopeX = -targets.RakeMm!.Value / car.WheelbaseMm.Estimate;
        var slopeY = targets.LeftRightDifferenceMm!.Value / ((car.FrontTrackMm.Estimate + car.RearTrackMm.Estimate) / 2);
        var met = At((100, slopeX, slopeY), marks);
        var asked = BodyPlane.Carry(wheels, marks) * At((100, slopeX, slopeY), wheels);
        for (var c = Corner.LF; c <= Corner.RR; c++)
            Assert.Equal(met[c], asked[c], 1e-9);
        var again = TargetsAtWheels.Of(car.Targets with { RakeMm = (met.LR + met.RR - met.LF - met.RF) / 2, LeftRightDifferenceMm = (met.LF + met.LR - met.RF - met.RR) / 2 }, car, heights);
        Assert.Equal(targets.RakeMm.Value, again.RakeMm!.Value, 1e-6);
        Assert.Equal(targets.LeftRightDifferenceMm.Value, again.LeftRightDifferenceMm!.Value, 1e-6);
    }, iter: 40);

    [Fact]
    public void The_plane_is_the_one_of_least_squares_and_the_rest_is_twist() => Gen.Int[0, int.MaxValue - 1].Sample(seed =>
    {
        // Against the normal equations solved by the library.
        var random = new Random(seed);
        var car = Heron.Car with { RideHeightMarks = Marks((300 * random.NextDouble(), 700), (10, -650 - 50 * random.NextDouble()), (2000, 500), (1800 + 200 * random.NextDouble(), -640)) };
        var (marks, wheels) = (BodyPlane.MarksOf(car), Contacts.Of(car));
        var heights = Corners.From(_ => 90 + 10 * random.NextDouble());
        var design = Matrix<double>.Build.Dense(4, 3, (row, column) => column == 0 ? 1 : column == 1 ? marks.X[(Corner)row] : marks.Y[(Corner)row]);
        var measured = Vector<double>.Build.Dense([heights.LF, heights.RF, heights.LR, heights.RR]);
        var plane = design.QR().Solve(measured);
        var residual = (measured - design * plane).L2Norm() / 2;
        var expected = Corners.From(c => plane[0] + plane[1] * wheels.X[c] + plane[2] * wheels.Y[c]);
        for (var c = Corner.LF; c <= Corner.RR; c++)
            Assert.Equal(expected[c], BodyPlane.AtWheels(car, heights)[c], 1e-6);
        Assert.Equal(residual, Math.Abs(BodyPlane.TwistMm(car, heights)), 1e-6);
    }, iter: 40);

    [Fact]
    public void One_height_misread_by_eight_millimetres_is_named_with_its_size_and_a_flat_set_is_not()
    {
        var car = Heron.Car with { RideHeightMarks = Marks((400, 600), (400, -600), (2000, 600), (2000, -600)) };
        var finding = Assert.Single(PerchPlanner.Plan(PlanCases.Ask(car, Heron.Loads, new(90, 98, 95, 95))).Findings, f => f.Code.Text == "SL-618");
        Assert.Contains("2.0 mm from one plane at each mark, RF and LR high: one of them is misread by about 8 mm", finding.Message.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(PerchPlanner.Plan(PlanCases.Ask(car, Heron.Loads, new(90, 92, 95, 97))).Findings, f => f.Code.Text == "SL-618");
        // Targets for all four say that the marks lie so on the body.
        car = car with { Targets = car.Targets with { RideHeightsMm = new(90, 98, 95, 95) } };
        Assert.DoesNotContain(PerchPlanner.Plan(PlanCases.Ask(car, Heron.Loads, new(91, 99, 96, 96))).Findings, f => f.Code.Text == "SL-618");
    }

    [Fact]
    public void A_limit_holds_where_the_height_is_measured()
    {
        // The front may come down by 0.2 mm at its marks and not at all further: no plan lowers a mark by more.
        var car = Heron.Car with { RideHeightMarks = Marks((-500, 600), (-500, -600), (1800, 600), (1800, -600)) };
        foreach (var corner in new[] { Corner.LF, Corner.RF })
            car = car.Change(corner, s => s with { LowestRideHeightMm = 89.8 });
        var request = PlanCases.Ask(car, Heron.Loads, Corners.Same(90));
        var plan = PerchPlanner.Plan(request);
        var rise = BodyPlane.AtMarks(car, request.Known.Effects.HeightsPerTurn) * plan.Turns;
        Assert.True(rise.LF >= -0.2 - 1e-9 && rise.RF >= -0.2 - 1e-9, plan.Words);
        Assert.NotEqual(default, plan.Turns);
    }

    [Fact]
    public void Marks_and_rake_go_through_the_car_file_and_back_inches_welcome()
    {
        var text = File.ReadAllText(RepositoryRoot.File("docs", "cars", "heron.json")).TrimEnd()[..^1].TrimEnd();
        const string Marked = """, "ride_height_marks": { "LF": { "behind_front_axle_mm": 600, "left_of_centre_mm": 700 }, "RF": { "behind_front_axle_mm": 600, "left_of_centre_mm": -700 }, "LR": { "behind_front_axle_mm": 1900, "left_of_centre_mm": 700 }, "RR": { "behind_front_axle_mm": 1900, "left_of_centre_mm": -700 } } }""";
        var read = CarFile.Read(text.Replace("\"ride_height_tolerance_mm\": 1.0", "\"rake_mm\": \"0.25 in\", \"rake_tolerance_mm\": \"0.02 in\"") + Marked);
        Assert.Empty(read.Mistakes);
        Assert.Equal((6.35, 0.508), (read.Car!.Targets.RakeMm!.Value, Math.Round(read.Car.Targets.RakeToleranceMm!.Value, 9)));
        Assert.Equal(new Place(1900, -700), read.Car.RideHeightMarks!.RR);
        var back = CarFile.Read(CarFileText.Of(read.Car)).Car!;
        Assert.Equal((read.Car.RideHeightMarks, read.Car.Targets), (back.RideHeightMarks, back.Targets));

        Assert.Equal("SL-617", Assert.Single(CarFile.Read(text + Marked.Replace("1900", "700")).Mistakes).Code.Text);
        Assert.Equal(["SL-617", "SL-617"], CarFile.Read(text + Marked.Replace("\"RF\": { \"behind_front_axle_mm\": 600, \"left_of_centre_mm\": -700", "\"RF\": { \"behind_front_axle_mm\": 9000, \"left_of_centre_mm\": 700")).Mistakes.Select(m => m.Code.Text));
        Assert.Equal(("SL-515", "targets.rake_mm"), CarFile.Read(text.Replace("\"ride_height_tolerance_mm\": 1.0", "\"rake_mm\": \"0,25 in\"") + "}").Mistakes.Select(m => (m.Code.Text, m.Where)).Single());
        Assert.Equal("SL-514", CarFile.Read(text + ", \"ride_height_marks\": { \"LF\": { \"behind_front_axle_mm\": 600, \"left_of_centre_mm\": 700 } } }").Mistakes[0].Code.Text);
    }

    static CarModel WithoutLimits(CarModel car) => Corners.All.ToArray().Aggregate(car, (c, corner) => c.Change(corner, s => s with { LowestRideHeightMm = null, HighestRideHeightMm = null }));

    // Targets as heights at the car's own marks.
    static CarModel With(CarModel car, (double Height, double AlongX, double AlongY) wanted) => car with { Targets = car.Targets with { RideHeightsMm = At(wanted, BodyPlane.MarksOf(car)), RakeMm = null, LeftRightDifferenceMm = null } };

    static (double Height, double AlongX, double AlongY) Plane(Random random, CarModel car) =>
        (95 + 4 * random.NextDouble(), (random.NextDouble() - 0.5) * 6 / car.WheelbaseMm.Estimate, (random.NextDouble() - 0.5) * 4 / car.FrontTrackMm.Estimate);

    static Corners At((double Height, double AlongX, double AlongY) plane, Contacts places) => Corners.From(c => plane.Height + plane.AlongX * places.X[c] + plane.AlongY * places.Y[c]);

    static PerCorner<Place> Marks((double Behind, double Left) lf, (double Behind, double Left) rf, (double Behind, double Left) lr, (double Behind, double Left) rr) =>
        new(new(lf.Behind, lf.Left), new(rf.Behind, rf.Left), new(lr.Behind, lr.Left), new(rr.Behind, rr.Left));

    static void Same(PerchPlan one, PerchPlan other)
    {
        Assert.Equal(one.Turns, other.Turns);
        foreach (var (a, b) in new[] { (one.Now.MeanRideHeightMm, other.Now.MeanRideHeightMm), (one.Now.RakeMm, other.Now.RakeMm), (one.Now.LeftRightDifferenceMm, other.Now.LeftRightDifferenceMm), (one.After.RakeMm, other.After.RakeMm), (one.Objective, other.Objective) })
            Assert.Equal(a, b, 1e-9 * Math.Max(1, Math.Abs(a)));
    }
}
