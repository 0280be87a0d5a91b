using Google.Protobuf.WellKnownTypes;
using ScaleLink.Daemon.Proving;
using ScaleLink.Weighing.Calibration;
using ScaleLink.Weighing.Statistics;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Publishing.Grpc.Proofs;

/// <summary>Puts calibrations into the words of the public API.</summary>
internal static class CalibrationMapping
{
    private const int Loads = 5;

    public static Wire.CalibrationSummary Summary(ShelvedCalibration shelved)
    {
        var summary = Summary(shelved.Calibration);
        summary.InForce = shelved.InForce;
        if (shelved.Adopted is { } adopted)
            Fill(summary, adopted);
        return summary;
    }

    /// <summary>Without what only its adoption says.</summary>
    public static Wire.CalibrationSummary Summary(PadCalibration calibration)
    {
        var at = calibration.IsProved ? calibration.ProvedToKg : calibration.CapacityKg;
        var summary = new Wire.CalibrationSummary
        {
            Id = calibration.Identity,
            SerialNumber = calibration.Pad,
            Standing = calibration.IsProved ? Wire.CalibrationStanding.Proved : Wire.CalibrationStanding.Starting,
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
        if (calibration.IsProved)
            (summary.Time, summary.ProvedToKg) = (Timestamp.FromDateTimeOffset(calibration.Time), calibration.ProvedToKg);
        return summary;
    }

    public static Wire.CalibrationComparison Comparison(ShelvedCalibration before, ShelvedCalibration now)
    {
        var comparison = new Wire.CalibrationComparison { Before = Summary(before), Now = Summary(now) };
        // A starting calibration claims too little to have moved from.
        if (before.Calibration.IsProved && now.Calibration.IsProved)
            comparison.Shifts.AddRange(ProofComparison.Of(before.Calibration, now.Calibration).Select(Shift));
        comparison.Loads.AddRange(BeforeAfter(before.Calibration, now.Calibration));
        return comparison;
    }

    public static Wire.Shift Shift(ProofShift shift) => new() { What = shift.What, Kg = shift.Kg, ExpandedKg = shift.ExpandedKg };

    /// <summary>What the same load reads by both, at some loads up to the highest of the new proof.</summary>
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
        var highest = calibration.IsProved ? calibration.ProvedToKg : calibration.CapacityKg;
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
        summary.ProofId = $"{adopted.Proof}";
    }
}
