using ScaleLink.Weighing.Calibration.Fitting;
using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Calibration.Results;
using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Calibration.Procedure;

/// <summary>Works a finished calibration procedure out: curve, characteristics, grade and, unless something speaks against it, a calibration.</summary>
static class CalibrationEvaluation
{
    /// <summary>The highest load must reach this share of the capacity (common practice, no published source).</summary>
    public const double LeastRange = 0.2;

    /// <summary>The highest load must give so many steps of resolution: the fewest intervals class III allows for e of 5 g or more (OIML R 76-1:2006, Table 3).</summary>
    public const double LeastSteps = 500;

    const double KgPerLb = 0.45359237;

    /// <summary>Works the calibration procedure out. Never throws for what a user can do wrong: the report says it.</summary>
    public static ProcedureReport Evaluate(ProcedureInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        try
        {
            return Refused(Beforehand(input)) ?? Worked(input);
        }
        catch (RefusedException refused)
        {
            return new ProcedureReport { Refusals = [refused.Diagnostic] };
        }
    }

    static ProcedureReport? Refused(List<Diagnostic> refusals) => refusals.Count == 0 ? null : new ProcedureReport { Refusals = refusals };

    static List<Diagnostic> Beforehand(ProcedureInput input)
    {
        List<Diagnostic> refusals = [];
        if (input.Points.Any(p => !double.IsFinite(p.Counts)))
            return [CalibrationCodes.CellFrozen.Because("a point has no number")];
        foreach (var stack in input.Points.Select(p => p.Load).Distinct().Where(s => !input.Masses.Knows(s)))
            refusals.Add(CalibrationCodes.MassUnknown.Because(stack.ToString()));
        if (refusals.Count > 0)
            return refusals;
        foreach (var repetition in input.Points.GroupBy(p => p.Repetition).Where(repetition => !repetition.Any(p => p.Load.IsEmpty)))
            refusals.Add(CalibrationCodes.TooFewPoints.Because($"repetition {repetition.Key} has no reading of the empty pad"));
        var range = input.Points.Count == 0 ? 0 : input.Points.Max(p => p.Counts) - input.Points.Min(p => p.Counts);
        if (range < LeastSteps * input.ResolutionCounts)
            refusals.Add(CalibrationCodes.SignalTooSmall.Because(
                $"all masses together make {range:0} counts, {LeastSteps * input.ResolutionCounts:0} are needed"));
        return refusals;
    }

    static ProcedureReport Worked(ProcedureInput input)
    {
        var curve = CurveFitter.Fit(input.Masses, input.Points);
        var characteristics = Characterisation.Of(input.Masses, input.Points, curve) with { Creep = input.Creep };
        var calibration = Calibrated(input, curve, characteristics);
        List<Diagnostic> refusals = [.. Afterwards(input, curve, calibration)];
        return new ProcedureReport
        {
            Refusals = refusals,
            Calibration = refusals.Count == 0 ? calibration : null,
            Curve = curve,
            Characteristics = characteristics,
            Grade = ClassGrade.Of(characteristics, input.Masses),
            Shifts = input.Before.IsCalibrated ? ProcedureComparison.Of(input.Before, calibration) : [],
            NotCovered = calibration.Errors.NotCovered(),
            Trims = input.Trims,
        };
    }

    static PadCalibration Calibrated(ProcedureInput input, CurveFit curve, PadCharacteristics found) => input.Before with
    {
        Standing = CalibrationStanding.Calibrated,
        ZeroCounts = curve.ZeroCounts,
        ZeroUncertaintyCounts = curve.ZeroUncertaintyCounts,
        SpanKgPerCount = curve.SpanKgPerCount,
        CurvatureKgPerCount2 = curve.CurvatureKgPerCount2,
        Repeatability = curve.Repeatability,
        RepeatabilityDegreesOfFreedom = curve.Choice.Fit.DegreesOfFreedom,
        MassesTogether = curve.MassesTogether,
        MassesApart = curve.MassesApart,
        Errors = ProcedureErrors.Of(input, curve, found),
        CellTrim = input.Trims?.Trim ?? input.Before.CellTrim,
        CalibratedToKg = found.Levels.Max(l => l.Kg),
        Place = input.Place,
        Time = input.Time,
        Who = input.Who,
        TemperatureC = input.TemperatureC,
    };

    static IEnumerable<Diagnostic> Afterwards(ProcedureInput input, CurveFit curve, PadCalibration calibration)
    {
        if (Diagnosis.Of(input.Masses, input.Points) is { } mistake)
            yield return mistake;
        else if (WholeSetInPounds(input.Before, calibration) is { } unit)
            yield return unit;
        else if (curve.Choice.Contradicted && ProcedureErrors.LeftOver(input, curve).FirstOrDefault(l => Matters(input, l)) is { Left: { LoadKg: > 0 } left })
            yield return CalibrationCodes.ShapeUnknown.Because(
                $"at {Kg(left.LoadKg):0.#} the curve leaves {Kg(left.Kg):+0.00}, where repeats agree within {Kg(curve.RepeatSdKg ?? 0):0.000}");
        if (calibration.CalibratedToKg < LeastRange * calibration.CapacityKg)
            yield return CalibrationCodes.RangeTooShort.Because(
                $"up to {Kg(calibration.CalibratedToKg):0.#} of {Kg(calibration.CapacityKg):0.#}; at least {LeastRange:P0} is needed");
        if (input.Asked is { } asked && calibration.Budget(asked.AtKg) is var budget && budget.Expanded(asked.Coverage) > asked.ExpandedKg)
            yield return NotReached(input, asked, budget);
    }

    // Very quiet pads contradict any curve by grams; only what a class III accuracy class would see is a fault of the pad.
    static bool Matters(ProcedureInput input, (LoadStack Load, AtLoad Left) level) =>
        Math.Abs(level.Left.Kg) > ErrorLimits.Kg(AccuracyClass.III, level.Left.LoadKg, ClassGrade.UsualIntervalKg) + input.Masses.ToleranceKg(level.Load);

    static Diagnostic? WholeSetInPounds(PadCalibration before, PadCalibration now)
    {
        var ratio = now.SpanKgPerCount / before.SpanKgPerCount;
        bool Near(double expected) => Math.Abs(ratio / expected - 1) < 0.1;
        return Near(1 / KgPerLb) || Near(KgPerLb)
            ? CalibrationCodes.WrongUnit.Because($"all masses: the span comes out {ratio:0.00} times that of the calibration before")
            : null;
    }

    static Diagnostic NotReached(ProcedureInput input, AskedUncertainty asked, UncertaintyBudget budget)
    {
        var largest = budget.Largest;
        Sentence found = $"±{Kg(budget.Expanded(asked.Coverage)):0.000} at {Kg(asked.AtKg):0.#}, ±{Kg(asked.ExpandedKg):0.000} asked";
        return RepetitionsNeeded(input, asked, budget) is { } repetitions
            ? CalibrationCodes.TooFewPoints.Because($"{found}; about {repetitions} repetitions in all would do")
            : CalibrationCodes.UncertaintyNotReached.Because($"{found}; largest term {largest.Name}, {Kg(largest.StandardUncertainty):0.000}");
    }

    // Repeatability of the fit, and the bow that it may hide, shrink with the number of repetitions; the other terms stay. Null where
    // no sensible number is enough.
    static int? RepetitionsNeeded(ProcedureInput input, AskedUncertainty asked, UncertaintyBudget budget)
    {
        const int most = 20;
        var fit = budget.Terms.Where(t => t.Name is BudgetTerms.Fit or BudgetTerms.Linearity).Sum(t => t.StandardUncertainty * t.StandardUncertainty);
        var rest = budget.StandardUncertainty * budget.StandardUncertainty - fit;
        var allowed = Math.Pow(asked.ExpandedKg / Coverage.Factor(probability: asked.Coverage), 2) - rest;
        var repetitions = Math.Ceiling(input.Points.Select(p => p.Repetition).Distinct().Count() * fit / allowed);
        return allowed > 0 && repetitions <= most ? (int)repetitions + 1 : null;
    }
}
