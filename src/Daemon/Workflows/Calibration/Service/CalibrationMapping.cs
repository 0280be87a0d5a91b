using Google.Protobuf.WellKnownTypes;
using ScaleLink.Weighing.Calibration.Procedure;
using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Statistics;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Calibration.Service;

/// <summary>Puts calibrations into the words of the public API.</summary>
internal static class CalibrationMapping
{
    private const int Loads = 5;

    public static Wire.CalibrationSummary Summary(ShelvedCalibration shelved)
    {
        var summary = Summary(shelved.Calibration);
        summary.InEffect = shelved.InEffect;
        if (shelved.Adopted is { } adopted)
            Fill(summary, adopted);
        return summary;
    }

    /// <summary>Without what only its adoption says.</summary>
    public static Wire.CalibrationSummary Summary(PadCalibration calibration)
    {
        var at = calibration.IsCalibrated ? calibration.CalibratedToKg : calibration.CapacityKg;
        var summary = new Wire.CalibrationSummary
        {
            Id = calibration.Identity,
            SerialNumber = calibration.Pad,
            Standing = calibration.IsCalibrated ? Wire.CalibrationStanding.Calibrated : Wire.CalibrationStanding.Nominal,
            Who = calibration.Who,
            CapacityKg = calibration.CapacityKg,
            SpanKgPerCount = calibration.SpanKgPerCount,
            CurvatureKgPerCount2 = calibration.CurvatureKgPerCount2,
            ZeroCounts = calibration.ZeroCounts,
            CellTrim = { calibration.CellTrim },
            Place = calibration.Place.Name,
            GravityMps2 = calibration.Place.GravityMps2,
            ExpandedAtKg = at,
            ExpandedUncertaintyKg = calibration.Budget(at).Expanded(),
        };
        if (calibration.TemperatureC is { } temperature)
            summary.TemperatureC = temperature;
        if (calibration.IsCalibrated)
            (summary.Time, summary.CalibratedToKg) = (Timestamp.FromDateTimeOffset(calibration.Time), calibration.CalibratedToKg);
        return summary;
    }

    public static Wire.CalibrationComparison Comparison(ShelvedCalibration before, ShelvedCalibration now)
    {
        var comparison = new Wire.CalibrationComparison { Before = Summary(before), Now = Summary(now) };
        // A nominal sensitivity claims too little to have moved from.
        if (before.Calibration.IsCalibrated && now.Calibration.IsCalibrated)
            comparison.Shifts.AddRange(ProcedureComparison.Of(before.Calibration, now.Calibration).Select(Shift));
        comparison.Loads.AddRange(BeforeAfter(before.Calibration, now.Calibration));
        return comparison;
    }

    public static Wire.Shift Shift(ProcedureShift shift) => new() { What = shift.What, Kg = shift.Kg, ExpandedKg = shift.ExpandedKg };

    /// <summary>What the same load reads by both, at some loads up to the highest of the new calibration procedure.</summary>
    public static IEnumerable<Wire.BeforeAfter> BeforeAfter(PadCalibration before, PadCalibration now)
    {
        // Other trims change the sum of the counts; for a load in the middle by the ratio of their means.
        var trims = now.CellTrim.Average() / before.CellTrim.Average();
        return Fractions(now).Select(kg => new Wire.BeforeAfter
        {
            BeforeKg = before.Kg(now.CountsAboveZero(kg) / trims),
            NowKg = kg,
            NowExpandedKg = now.Budget(kg).Expanded(),
        });
    }

    public static IEnumerable<Wire.LoadBudget> Budgets(PadCalibration calibration) => Fractions(calibration).Select(kg =>
    {
        var budget = calibration.Budget(kg);
        var result = new Wire.LoadBudget { LoadKg = kg, StandardUncertaintyKg = budget.StandardUncertainty, ExpandedKg = budget.Expanded() };
        if (double.IsFinite(budget.DegreesOfFreedom))
            result.DegreesOfFreedom = budget.DegreesOfFreedom;
        result.Terms.AddRange(budget.Terms.Select(Term));
        return result;
    });

    private static IEnumerable<double> Fractions(PadCalibration calibration)
    {
        var highest = calibration.IsCalibrated ? calibration.CalibratedToKg : calibration.CapacityKg;
        return Enumerable.Range(1, Loads).Select(i => highest * i / Loads);
    }

    private static Wire.BudgetTerm Term(UncertaintyTerm term)
    {
        var result = new Wire.BudgetTerm { Name = term.Name, StandardUncertaintyKg = term.StandardUncertainty };
        if (double.IsFinite(term.DegreesOfFreedom))
            result.DegreesOfFreedom = term.DegreesOfFreedom;
        return result;
    }

    private static void Fill(Wire.CalibrationSummary summary, AdoptedCalibration adopted)
    {
        summary.Who = adopted.Who;
        summary.AdoptedAt = Timestamp.FromDateTimeOffset(adopted.At);
        summary.Readopted = adopted.Again;
        summary.Note = adopted.Note;
        summary.ProcedureId = $"{adopted.Procedure}";
    }
}
