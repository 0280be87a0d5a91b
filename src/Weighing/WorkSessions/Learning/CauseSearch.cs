using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.WorkSessions.Learning;

/// <summary>
/// Tries the usual mishaps of the trade one by one: recomputes the step as if each had happened and sees whether the reading
/// then agrees. Those that explain it come first, by how well they fit all four loads; those that can only be looked for come after.
/// </summary>
static class CauseSearch
{
    // Each thing more that must have gone wrong has to pay for itself in fit, as a parameter does with Akaike (1974): twice.
    const double PerDeparture = 2;

    public static IReadOnlyList<LikelyCause> Of(StepLearner known, StepRecord step, bool sumsDisagree)
    {
        List<LikelyCause> causes = [];
        var change = step.After.Loads - known.Last.Loads;
        if (!step.Settled)
            causes.Add(new(StepCause.NotSettled, true, "The reading was taken before the car had settled: settle and weigh again."));
        if (Math.Abs(change.Sum) > 4 * TotalUncertainty(known.Last, step.After))
            causes.Add(new(StepCause.MassChanged, true, $"The total changed by {Kg(change.Sum):+0.0}: look for a person, a tool or fuel."));
        else if (sumsDisagree)
            causes.Add(new(StepCause.PatchMoved, true, "Pads or car moved: check that pads lie on their marks and tyres on their centres."));
        causes.AddRange(Mishaps(known, step)
            .Where(m => StepJudge.WouldAgree(known, step, m.Change))
            .OrderBy(m => StepJudge.Misfit(known, step, m.Change) + PerDeparture * m.Departures)
            .Select(m => new LikelyCause(m.Cause, true, m.Words, m.Turns)));
        causes.AddRange(Suspicions(known, step).Where(s => causes.All(c => c.Cause != s.Cause)));
        return causes;
    }

    // A mishap, what it would have done to the loads, how many things must have gone wrong for it, and what was turned then.
    readonly record struct Mishap(StepCause Cause, Corners Change, int Departures, Sentence Words, Corners? Turns);

    static IEnumerable<Mishap> Mishaps(StepLearner known, StepRecord step)
    {
        var (effects, turns) = (known.Effects, step.Turns);
        foreach (var (cause, bars, words) in BarMishaps(effects.Statics))
            yield return new(cause, bars.FromTurns(turns), 1, words, null);
        var turned = Corners.All.ToArray().Where(c => turns[c] != 0).ToList();
        if (turned.Count > 1)
            yield return Turned(StepCause.WrongDirection, -1 * turns, turned.Count, "All turns look to have gone the other way: check what up means on these perches.");
        foreach (var corner in turned)
        {
            var without = turns.With(corner, 0);
            yield return Turned(StepCause.TurnMissed, without, 1, $"It reads as if {corner} had not been turned: check its lock ring.");
            yield return Turned(StepCause.WrongDirection, turns.With(corner, -turns[corner]), 1, $"It reads as if {corner} had been turned the other way.");
            foreach (var other in Corners.All.ToArray().Where(c => c != corner && effects.Statics.Car.Suspension[c].Perch.CanTurn))
                yield return Turned(StepCause.WrongCorner, without.With(other, without[other] + turns[corner]), 2, $"It reads as if {other} had been turned instead of {corner}.");
        }

        Mishap Turned(StepCause cause, Corners really, int departures, Sentence words) => new(cause, effects.LoadsPerTurn * really, departures, words, really);
    }

    static IEnumerable<(StepCause, CarStatics, string)> BarMishaps(CarStatics statics)
    {
        var car = statics.Car;
        if (car.FrontBar is { Connected: false } || car.RearBar is { Connected: false })
            yield return (StepCause.BarConnected, statics.WithUncertainty(car.WithBars(connected: true)), "An anti-roll bar seems to be connected: take a drop link off.");
        if (car.FrontBar is { Connected: true } || car.RearBar is { Connected: true })
            yield return (StepCause.BarOff, statics.WithUncertainty(car.WithBars(connected: false)), "An anti-roll bar that should be connected seems to be off.");
    }

    // These leave no pattern of their own in four loads.
    static IEnumerable<LikelyCause> Suspicions(StepLearner known, StepRecord step)
    {
        yield return new(StepCause.NotSettled, false, "Settle the car again (roll or bounce) and weigh once more.");
        var predicted = known.NextReading(step.Turns).Estimate - known.CrossWeightPercent.Estimate;
        var share = (step.After.CrossWeightPercent.Estimate - known.CrossWeightPercent.Estimate) / predicted;
        if (share is > -0.2 and < 0.9)
            yield return new(StepCause.Binding, false, $"Only {100 * Math.Max(0, share):F0} % of the change arrived: look for a binding damper or bush.");
        yield return new(StepCause.TyrePressure, false, "Check tyre pressures.");
        yield return new(StepCause.PatchMoved, false, "Check that no pad has moved.");
    }

    static double TotalUncertainty(LoadSummary before, LoadSummary after) =>
        Math.Max(0.5, Math.Sqrt(Math.Pow(before.TotalKg.Uncertainty, 2) + Math.Pow(after.TotalKg.Uncertainty, 2)));
}
