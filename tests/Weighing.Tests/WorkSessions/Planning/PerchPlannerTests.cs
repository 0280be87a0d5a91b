using CsCheck;
using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.WorkSessions.Planning;
using Weighing.Tests.Cars;

namespace Weighing.Tests.WorkSessions.Planning;

public class PerchPlannerTests
{
    [Fact]
    public void No_plan_goes_beyond_thread_fixed_perch_or_ride_height_limit() =>
        Gen.Int[0, int.MaxValue - 1].Sample(seed =>
        {
            var request = PlanCases.Draw(new Random(seed), smallestTurn: 0.125, thread: 6);
            var plan = PerchPlanner.Plan(request);
            Assert.True(PlanCases.Allowed(request, plan.Turns), plan.Words);
            Assert.All(plan.Alternatives.Where(a => a.Kind == AlternativeKind.GiveUpRideHeight), a => Assert.True(PlanCases.Allowed(request, a.Turns)));
            foreach (var corner in Corners.All)
                Assert.Equal(0, Math.IEEERemainder(plan.Turns[corner], 0.125), 1e-12);
        }, iter: 50);

    [Fact]
    public void A_car_on_target_is_left_alone()
    {
        var plan = PerchPlanner.Plan(PlanCases.Ask(Heron.Car, new(272, 272.3, 252, 251.8)));

        Assert.True(plan is { AlreadyThere: true, Reaches: true, Words: "nothing to turn" });
        Assert.Empty(plan.Findings);
    }

    [Fact]
    public void The_demo_car_is_brought_to_target_in_words_the_crew_can_follow()
    {
        var plan = PerchPlanner.Plan(PlanCases.Ask(Heron.Car, Heron.Loads));

        Assert.True(plan.Reaches);
        Assert.Equal(2.0, plan.Now.CrossWeightPercent, 0.01);
        Assert.True(plan.Turns is { LF: > 0, RF: < 0, LR: < 0, RR: > 0 });
        Assert.EndsWith(": then settle", plan.Words);
        Assert.Equal(50, plan.Forecast.CrossWeightPercent.Estimate, 0.1);
        Assert.InRange(plan.Forecast.CrossWeightPercent.Uncertainty, 0.1, 0.3);
        Assert.Equal(plan.Forecast.CrossWeightPercent.Estimate, plan.Forecast.Loads.CrossWeightPercent.Estimate, 0.01);
        Assert.All(plan.Forecast.HeightUncertaintiesMm.Map(u => u) is var u ? new[] { u.LF, u.RF, u.LR, u.RR } : [], x => Assert.InRange(x, 0.01, 1));
    }

    [Fact]
    public void A_thread_that_ends_is_named_and_what_more_thread_would_do()
    {
        var car = Heron.Car;
        foreach (var corner in Corners.All)
            car = car.Change(corner, s => s with { Perch = s.Perch with { UpTurnsLeft = corner == Corner.LF ? 0 : 8 } });

        var plan = PerchPlanner.Plan(PlanCases.Ask(car, Heron.Loads));

        Assert.False(plan.Reaches);
        Assert.Contains(plan.Findings, f => f.Code == PlanCodes.OutOfReach && f.Message.ToString().Contains("thread at LF"));
        Assert.Contains(plan.Alternatives, a => a is { Kind: AlternativeKind.MoreThread, Corner: Corner.LF, Turns.LF: > 0 });
        var sacrifice = Assert.Single(plan.Alternatives, a => a.Kind == AlternativeKind.GiveUpRideHeight);
        Assert.Equal(0, sacrifice.After.CrossWeightPercent, 0.2);
        Assert.Equal(0, sacrifice.Turns.LF);
    }

    [Fact]
    public void Three_fixed_perches_leave_cross_weight_against_ride_height()
    {
        var car = Heron.Car;
        foreach (var corner in (ReadOnlySpan<Corner>)[Corner.LF, Corner.RF, Corner.LR])
            car = car.Change(corner, s => s with { Perch = s.Perch with { CanTurn = false } });

        var plan = PerchPlanner.Plan(PlanCases.Ask(car, Heron.Loads));

        Assert.False(plan.Reaches);
        Assert.Equal(0, plan.Turns.LF + plan.Turns.RF + plan.Turns.LR);
        Assert.NotEmpty(plan.Findings);
    }

    [Fact]
    public void A_height_limit_that_binds_is_named()
    {
        var car = Heron.Car with { Targets = new() { RideHeightsMm = new(104, 104, 104, 104) } };
        car = car.Change(Corner.RR, s => s with { HighestRideHeightMm = 101 });

        var plan = PerchPlanner.Plan(PlanCases.Ask(car, new(272, 272, 252, 252), Corners.Same(100)));

        Assert.False(plan.Reaches);
        Assert.Contains(plan.Findings, f => f.Message.ToString().Contains("ride height limit at RR"));
        Assert.True(100 + plan.Forecast.HeightChangesMm.RR <= 101 + 1e-9);
    }

    [Fact]
    public void Ride_height_targets_are_reached_with_cross_weight_kept()
    {
        var car = Heron.Car with { Targets = new() { RideHeightsMm = new(98, 98, 103, 103) } };

        var plan = PerchPlanner.Plan(PlanCases.Ask(car, new(272, 272, 252, 252), Corners.Same(100)));

        Assert.True(plan.Reaches);
        Assert.True(plan.Turns is { LF: < 0, RF: < 0, LR: > 0, RR: > 0 });
        Assert.Equal(5, plan.Forecast.HeightChangesMm.LR - plan.Forecast.HeightChangesMm.LF, 0.7);
    }

    [Fact]
    public void A_corner_outside_its_limits_already_is_said_and_not_made_worse()
    {
        var car = Heron.Car.Change(Corner.LF, s => s with { HighestRideHeightMm = 95 });

        var plan = PerchPlanner.Plan(PlanCases.Ask(car, Heron.Loads, Corners.Same(100)));

        Assert.Contains(plan.Findings, f => f.Code == PlanCodes.RideHeightOutside);
        Assert.True(plan.Forecast.HeightChangesMm.LF <= 1e-9);
    }

    [Fact]
    public void Guesses_and_limits_that_nobody_watches_are_said()
    {
        var car = Heron.Car.Change(Corner.RF, s => s with { TyreRateNPerMm = Stated.Guess(200, 80), LowestRideHeightMm = 80 });

        var codes = PerchPlanner.Plan(PlanCases.Ask(car, Heron.Loads)).Findings.Select(f => f.Code);

        Assert.Equal([PlanCodes.LimitsNotWatched, PlanCodes.PlannedOnGuesses], codes);
    }

    [Fact]
    public void Questions_that_cannot_be_planned_are_refused_with_every_reason()
    {
        var car = Heron.Car;
        foreach (var corner in Corners.All)
            car = car.Change(corner, s => s with { Perch = s.Perch with { CanTurn = false } });
        var request = PlanCases.Ask(car, Heron.Loads) with { Targets = new() { RakeMm = 5, CrossWeightTolerancePercent = 0 } };

        var codes = Assert.Throws<DiagnosticException>(() => PerchPlanner.Plan(request)).Diagnostics.Select(f => f.Code);

        Assert.Equal([CarCodes.Target, PlanCodes.NothingToTurn, PlanCodes.InputUnusable], codes);
    }
}
