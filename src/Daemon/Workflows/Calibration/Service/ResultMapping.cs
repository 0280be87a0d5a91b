using ScaleLink.Weighing.Calibration.Procedure;
using ScaleLink.Weighing.Calibration.Results;
using ScaleLink.Weighing.Pads;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Calibration.Service;

/// <summary>Puts the outcome of a calibration procedure into the words of the public API.</summary>
internal static class ResultMapping
{
    public static Wire.ProcedureResult Result(ProcedureReport report, PadCalibration before, Func<Diagnostic, Wire.Diagnostic> told)
    {
        var result = new Wire.ProcedureResult
        {
            Refusals = { report.Refusals.Select(told) },
            Before = before.HasSensitivity ? CalibrationMapping.Summary(before) : null,
            CurveOrder = (uint)(report.Curve?.Order ?? 0),
            Shifts = { report.Shifts.Select(CalibrationMapping.Shift) },
            NotCovered = { report.NotCovered },
            TakenAsUsual = { report.TakenAsUsual },
            Characteristics = report.Characteristics is { } found ? Characteristics(found) : null,
            AccuracyClass = report.Grade?.ToString() ?? "",
            TypedAccuracyClass = report.Grade is { } grade ? Wire.Sentence.Of(grade.Words) : null,
            AccuracyClassOutcome = Outcome(report.Grade?.Outcome),
        };
        var conclusion = ProcedureConclusion.Of(report, before);
        (result.Conclusion, result.TypedConclusion) = (conclusion, Wire.Sentence.Of(conclusion));
        if (report.Calibration is { } calibration)
        {
            result.Calibration = CalibrationMapping.Summary(calibration);
            result.Budgets.AddRange(CalibrationMapping.Budgets(calibration));
            result.ErrorLimits.AddRange(Limits(calibration.CalibratedToKg));
            if (before.HasSensitivity)
                result.BeforeAfter.AddRange(CalibrationMapping.BeforeAfter(before, calibration));
        }

        result.Ballast.AddRange((report.Curve?.Ballast ?? []).Select(b => new Wire.FoundBallast { Label = b.Label, Kg = b.Kg, StandardUncertaintyKg = b.StandardUncertaintyKg }));
        if (report.Trims is { } trims)
            result.Trim = new Wire.TrimResult { CellTrim = { trims.Trim }, BeforeKg = trims.BeforeKg, AfterKg = trims.AfterKg, SparePlaces = (uint)trims.SparePlaces };
        return result;
    }

    private static IEnumerable<Wire.ErrorLimit> Limits(double highestKg)
    {
        var from = 0.0;
        foreach (var (upTo, limit) in ErrorLimits.StepsKg(AccuracyClass.III, ClassGrade.UsualIntervalKg))
        {
            if (from >= highestKg)
                yield break;
            yield return new Wire.ErrorLimit { UpToKg = Math.Min(upTo, highestKg), LimitKg = limit };
            from = upTo;
        }
    }

    private static Wire.Characteristics Characteristics(PadCharacteristics found)
    {
        var result = new Wire.Characteristics
        {
            NonLinearity = At(found.NonLinearity),
            Hysteresis = found.Hysteresis is { } loop ? At(loop) : null,
            Repeatability = found.Repeatability is { } spread ? At(spread) : null,
        };
        if (found.ZeroReturnKg is { } back)
            result.ZeroReturnKg = back;
        if (found.Creep is { } creep)
        {
            result.Creep = new Wire.FoundAt { Kg = creep.After30MinKg, LoadKg = creep.LoadKg };
            result.LateCreepKg = creep.From20To30MinKg;
        }

        return result;
    }

    private static Wire.FoundAt At(AtLoad at) => new() { Kg = at.Kg, LoadKg = at.LoadKg };

    private static Wire.AccuracyClassOutcome Outcome(GradeOutcome? outcome) => outcome switch
    {
        GradeOutcome.Inside => Wire.AccuracyClassOutcome.Inside,
        GradeOutcome.Outside => Wire.AccuracyClassOutcome.Outside,
        GradeOutcome.NotGraded => Wire.AccuracyClassOutcome.NotGraded,
        _ => Wire.AccuracyClassOutcome.Unspecified,
    };
}
