using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Statics;
using ScaleLink.Weighing.WorkSessions.Learning;

namespace ScaleLink.Weighing.WorkSessions.Planning;

/// <summary>
/// Which perches to turn, and how far, so that cross weight meets its target and the ride heights stay or come right.
/// The best plan by <see cref="PlanObjective"/> within threads and ride height limits; exact, not approximate.
/// </summary>
static class PerchPlanner
{
    /// <summary>Plans the next step.</summary>
    /// <exception cref="DiagnosticException">No perch can turn, or a number in the question is not usable.</exception>
    public static PerchPlan Plan(PlanRequest request)
    {
        Refuse(request);
        var car = request.Known.CarNow;
        var problem = PlanProblem.Of(request);
        var there = !request.Refine && PlanObjective.WithinTolerance(problem.Now, problem.Targets);
        var turns = there ? default : LatticeSearch.Best(problem);
        var after = problem.After(turns);
        var reaches = PlanObjective.WithinTolerance(after, problem.Targets);
        var (limits, alternatives) = reaches ? ([], []) : LimitSearch.Of(problem, turns, car);
        return new()
        {
            Turns = turns,
            UnroundedTurns = LatticeSearch.Unrounded(problem),
            Now = problem.Now,
            After = after,
            Objective = problem.Value(turns),
            AlreadyThere = there,
            Reaches = reaches,
            Forecast = Forecast(request.Known, turns),
            Findings = [.. Uncertainties(car, request.RideHeightsMm), .. Twist(car, request), .. limits],
            Alternatives = alternatives,
        };
    }

    /// <summary>What the crew will read after these turns, planned or not, and a settling.</summary>
    public static PlanForecast Forecast(StepLearner known, in Corners turns)
    {
        var statics = known.Effects.Statics;
        var change = known.Effects.Forecast(turns);
        // Settling anew moves load along the warp pattern only: so much of it is one percent of cross weight.
        var warp = statics.FromBuiltInWarp(1);
        var onePercent = statics.TotalKg / 100 / Shares.CrossWeight.Dot(warp) * warp;
        var repeatability = known.SettleRepeatabilityPercent * onePercent;
        var start = known.Last.Loads + (known.CrossWeightPercent.Estimate - known.Last.CrossWeightPercent.Estimate) * onePercent;
        var spread = 2 * known.Last.Covariance + change.LoadCovariance + 2 * CornerMatrix.Outer(repeatability, repeatability);
        var (rise, covariance) = BodyPlane.AtMarks(statics.Car, change.Heights, change.HeightCovariance);
        return new(new LoadSummary(start + change.Loads, spread), known.NextReading(turns),
            rise, covariance.DiagonalPart.Map(v => Math.Sqrt(Math.Max(0, v))));
    }

    static void Refuse(PlanRequest request)
    {
        var car = request.Known.Effects.Statics.Car;
        List<Diagnostic> found = [.. CarModelCheck.Mistakes(car with { Targets = request.Targets })];
        if (Corners.All.ToArray().All(c => !car.Suspension[c].Perch.CanTurn))
            found.Add(new(PlanCodes.NothingToTurn, "No perch of this car can turn.", "Say in the car model which do; otherwise packers or other springs must do it."));
        if (request.RideHeightsMm is { } heights && Corners.All.ToArray().Any(c => !double.IsFinite(heights[c])))
            found.Add(new(PlanCodes.InputUnusable, "A ride height is not a number.", "Measure all four, or give none."));
        if (request is { RideHeightsMm: null, Targets: { RideHeightsMm: not null } or { RakeMm: not null } or { LeftRightDifferenceMm: not null } })
            found.Add(new(PlanCodes.InputUnusable, "There is a target for ride heights, but they were not measured.", "Measure all four ride heights, or plan without that target."));
        if (found.Count > 0)
            throw new DiagnosticException(found);
    }

    // Without marks nobody has said that heights are measured where they can be compared.
    static IEnumerable<Diagnostic> Twist(CarModel car, PlanRequest request)
    {
        if (car.RideHeightMarks is null || request.RideHeightsMm is not { } heights)
            yield break;
        // Marks may lie at different heights on the body by themselves: targets for all four say how.
        var twist = BodyPlane.TwistMm(car, heights - (request.Targets.RideHeightsMm ?? default));
        if (Math.Abs(twist) > BodyPlane.WorthALookMm)
            yield return new(PlanCodes.HeightsNotFlat, $"The four ride heights lie {Mm(Math.Abs(twist)):0.0} from one plane at each mark, {(twist > 0 ? "LF and RR" : "RF and LR")} high: one of them is misread by about {Mm(4 * Math.Abs(twist)):0}, or body or floor are twisted.",
                "Measure them again. What comes back is twist: the plan goes by the plane through all four and cannot turn it away.");
    }

    static IEnumerable<Diagnostic> Uncertainties(CarModel car, Corners? heights)
    {
        foreach (var corner in Corners.All.ToArray())
            if (heights is not null && (heights.Value[corner] < car.Suspension[corner].LowestRideHeightMm || heights.Value[corner] > car.Suspension[corner].HighestRideHeightMm))
                yield return new(PlanCodes.RideHeightOutside, $"The ride height at {corner}, {Mm(heights.Value[corner]):0.0}, is outside its limits already.",
                    "Bring it back first, or correct the limit.");
        if (heights is null && Corners.All.ToArray().Any(c => car.Suspension[c] is { LowestRideHeightMm: not null } or { HighestRideHeightMm: not null }))
            yield return new(PlanCodes.LimitsNotWatched, "The car has ride height limits, but no ride heights were measured.",
                "Measure all four, or watch the limits yourself: the plan does not.");
        if (car.Guesses() is { Count: > 0 } guesses)
            yield return new(PlanCodes.PlannedOnGuesses, $"Nobody stated these, the plan guesses: {string.Join(", ", guesses)}.",
                "Record every step: the steps teach what the guesses miss. Or state them in the car model.");
    }
}
