using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Statics;
using ScaleLink.Weighing.WorkSessions.Learning;
using ScaleLink.Weighing.WorkSessions.Planning;

namespace Weighing.Tests.WorkSessions.Learning.Convergence;

/// <summary>What one crew got to, on one car.</summary>
/// <param name="Steps">Adjustments until the reading was within 0.2 % of the target; <see cref="Trial.MostSteps"/> + 1 when never.</param>
/// <param name="TrueMiss">Cross weight then, without repeatability and noise, away from the target, percent.</param>
/// <param name="Rise">Ride heights then, away from where they should be, mm.</param>
/// <param name="Violations">Steps that went beyond thread or ride height limits.</param>
/// <param name="Inside">For each step, whether the reading lay within the 95 % interval stated before; empty for a crew that states none.</param>
/// <param name="FalseAlarms">Steps that were called wrong although they were made as planned.</param>
sealed record Outcome(int Steps, double TrueMiss, Corners Rise, int Violations, IReadOnlyList<bool> Inside, int FalseAlarms)
{
    public double WorstRise => Math.Max(Math.Max(Math.Abs(Rise.LF), Math.Abs(Rise.RF)), Math.Max(Math.Abs(Rise.LR), Math.Abs(Rise.RR)));

    public double Rake => (Rise.LR + Rise.RR - Rise.LF - Rise.RF) / 2;

    public double LeftRightDifference => (Rise.LF + Rise.LR - Rise.RF - Rise.RR) / 2;
}

/// <summary>Three crews on the same kind of car until the reading says it is done.</summary>
static class Trial
{
    public const int MostSteps = 8;
    public const double Target = 50, Band = 0.2;

    /// <summary>A crew that follows the plan and records each step.</summary>
    public static Outcome Planned(WorkshopCar car)
    {
        Corners made = default;
        var reading = car.Weigh(made);
        var known = StepLearner.Start(new CarStatics(car.Believed, reading.TotalKg.Estimate), reading, WorkshopCar.SettleRepeatability);
        List<bool> inside = [];
        int steps = 0, violations = 0, alarms = 0;
        // Heights are measured once, before the first turn; afterwards the crew trusts the forecast.
        var heights = WorkshopCar.HeightsAtStart;
        while (!Done(reading) && steps < MostSteps)
        {
            var plan = PerchPlanner.Plan(new(known, heights, Refine: true) { Targets = known.Effects.Statics.Car.Targets with { RideHeightsMm = WorkshopCar.HeightsAtStart } });
            var stated = plan.Forecast.CrossWeightPercent;
            made += plan.Turns;
            heights += plan.Forecast.HeightChangesMm;
            reading = car.Weigh(made);
            steps++;
            inside.Add(Math.Abs(reading.CrossWeightPercent.Estimate - stated.Estimate) <= stated.HalfWidth());
            violations += Violations(car, made);
            var (check, next) = known.Record(new(plan.Turns, reading));
            known = next;
            alarms += check.Agrees ? 0 : 1;
        }
        return Ended(car, made, reading, steps, violations, inside, alarms);
    }

    /// <summary>A rival: both perches of one diagonal alike, in proportion to the error, from the same believed rates.</summary>
    public static Outcome OneDiagonal(WorkshopCar car) => Proportional(car, new(0, 1, 1, 0));

    /// <summary>A better rival: all four perches alike, one diagonal against the other, which keeps the mean height of like springs.</summary>
    public static Outcome AllFour(WorkshopCar car) => Proportional(car, new(-1, 1, 1, -1));

    static Outcome Proportional(WorkshopCar car, Corners pattern)
    {
        Corners made = default;
        var reading = car.Weigh(made);
        var perTurn = new CarStatics(car.Believed, reading.TotalKg.Estimate).FromTurns(pattern);
        var percentPerTurn = 100 * (perTurn.RF + perTurn.LR) / reading.TotalKg.Estimate;
        int steps = 0, violations = 0;
        while (!Done(reading) && steps < MostSteps)
        {
            var wanted = (Target - reading.CrossWeightPercent.Estimate) / percentPerTurn;
            var turn = car.Believed.SmallestTurn * Math.Round(wanted / car.Believed.SmallestTurn);
            if (turn == 0)
                turn = Math.CopySign(car.Believed.SmallestTurn, wanted);
            made += turn * pattern;
            reading = car.Weigh(made);
            steps++;
            violations += Violations(car, made);
        }
        return Ended(car, made, reading, steps, violations, [], 0);
    }

    static bool Done(LoadSummary reading) => Math.Abs(reading.CrossWeightPercent.Estimate - Target) <= Band;

    static int Violations(WorkshopCar car, Corners made)
    {
        var rise = car.TrueRise(made);
        return Corners.All.ToArray().Any(c => Math.Abs(made[c]) > WorkshopCar.Thread + 1e-9 || Math.Abs(rise[c]) > WorkshopCar.HeightBand) ? 1 : 0;
    }

    static Outcome Ended(WorkshopCar car, Corners made, LoadSummary reading, int steps, int violations, IReadOnlyList<bool> inside, int alarms) =>
        new(Done(reading) ? steps : MostSteps + 1, car.TrueCrossWeight(made) - Target, car.TrueRise(made), violations, inside, alarms);
}
