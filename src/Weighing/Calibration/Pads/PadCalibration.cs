using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Calibration;

/// <summary>How a calibration came about.</summary>
public enum CalibrationStanding
{
    /// <summary>From configuration or a data sheet: loads are unproved.</summary>
    Starting,
    /// <summary>From known masses on this pad.</summary>
    Proved,
}

/// <summary>
/// What turns a pad's counts into kilograms, with what is known of its errors. Immutable; its identity is a hash of its
/// content. The load is <c>(Span x + Curvature x²) g_proof / g_use</c>, x being trimmed counts above the zero in force.
/// </summary>
public sealed record PadCalibration
{
    /// <summary>Serial number of the pad.</summary>
    public required string Pad { get; init; }

    /// <summary>Starting or proved.</summary>
    public required CalibrationStanding Standing { get; init; }

    /// <summary>Trimmed counts of the empty pad at the proof. In service the zero in force takes its place.</summary>
    public required double ZeroCounts { get; init; }

    /// <summary>Standard uncertainty of <see cref="ZeroCounts"/>.</summary>
    public double ZeroUncertaintyCounts { get; init; }

    /// <summary>Slope at zero, kg per count; negative where cells are wired in reverse.</summary>
    public required double SpanKgPerCount { get; init; }

    /// <summary>Half the second derivative, kg per count squared; zero for a straight pad.</summary>
    public double CurvatureKgPerCount2 { get; init; }

    /// <summary>Covariance by scatter of the points; for a starting calibration, by the stated uncertainty.</summary>
    public CurveCovariance Scatter { get; init; }

    /// <summary>Degrees of freedom of <see cref="Scatter"/>; null for many.</summary>
    public double? ScatterDegreesOfFreedom { get; init; }

    /// <summary>Covariance by the masses, were the masses of each lot to err together.</summary>
    public CurveCovariance MassesTogether { get; init; }

    /// <summary>Covariance by the masses, were each to err by itself.</summary>
    public CurveCovariance MassesApart { get; init; }

    /// <summary>Errors beyond the curve.</summary>
    public ErrorSources Errors { get; init; } = new();

    /// <summary>Factor of each cell's counts in the sum; one a cell.</summary>
    public required IReadOnlyList<double> CellTrim { get; init; }

    /// <summary>Capacity of the pad, kg.</summary>
    public required double CapacityKg { get; init; }

    /// <summary>Highest load of the proof, kg; zero for a starting calibration.</summary>
    public double ProvedToKg { get; init; }

    /// <summary>Where it was proved; for a starting calibration, where it is used.</summary>
    public required Place Place { get; init; }

    /// <summary>When, UTC.</summary>
    public required DateTimeOffset Time { get; init; }

    /// <summary>Who proved it.</summary>
    public string Who { get; init; } = "";

    /// <summary>Temperature of the pad at the proof, °C.</summary>
    public double? TemperatureC { get; init; }

    /// <summary>True once proved with masses.</summary>
    public bool IsProved => Standing == CalibrationStanding.Proved;

    /// <summary>SHA-256 over the content, 64 hexadecimal digits.</summary>
    public string Identity => CalibrationText.Hash(this);

    /// <summary>The first 12 digits of the identity, for people.</summary>
    public string ShortIdentity => Identity[..12];

    /// <summary>A calibration from configuration: kilograms per count and its relative standard uncertainty.</summary>
    /// <exception cref="RefusedException">SL-329: the numbers make no sense.</exception>
    public static PadCalibration Starting(
        string pad, double kgPerCount, double relativeUncertainty, double capacityKg, int cells, Place place, DateTimeOffset time)
    {
        var sensible = double.IsFinite(kgPerCount) && kgPerCount != 0 && relativeUncertainty is > 0 and < 1 && capacityKg > 0 && cells is >= 1 and <= 8;
        if (!sensible)
            throw new RefusedException(CalibrationCodes.StartUnusable.Because(
                $"{kgPerCount} kg per count ± {relativeUncertainty:P1}, capacity {capacityKg} kg, {cells} cells"));
        var u = kgPerCount * relativeUncertainty;
        return new PadCalibration
        {
            Pad = pad,
            Standing = CalibrationStanding.Starting,
            ZeroCounts = 0,
            SpanKgPerCount = kgPerCount,
            Scatter = new CurveCovariance(u * u, 0, 0),
            CellTrim = [.. Enumerable.Repeat(1.0, cells)],
            CapacityKg = capacityKg,
            Place = place,
            Time = time,
        };
    }

    /// <summary>Counts of the cells, one a cell, weighed by their trims and added up.</summary>
    public double Counts(ReadOnlySpan<double> cellCounts)
    {
        if (cellCounts.Length != CellTrim.Count)
            throw new RefusedException(CalibrationCodes.ReadingOfOtherPad.Because($"{cellCounts.Length} cells read, {CellTrim.Count} calibrated"));
        var sum = 0.0;
        for (var i = 0; i < cellCounts.Length; i++)
            sum += CellTrim[i] * cellCounts[i];
        return sum;
    }

    /// <summary>Load in kg at <paramref name="countsAboveZero"/>, where it was proved.</summary>
    public double Kg(double countsAboveZero) => countsAboveZero * (SpanKgPerCount + CurvatureKgPerCount2 * countsAboveZero);

    /// <summary>Counts above zero that a load in kg gives, where it was proved.</summary>
    public double CountsAboveZero(double kg)
    {
        // The root near kg / span, written so that nothing cancels when the curvature is small.
        var discriminant = Math.Max(0, SpanKgPerCount * SpanKgPerCount + 4 * CurvatureKgPerCount2 * kg);
        return 2 * kg / (SpanKgPerCount + Math.CopySign(Math.Sqrt(discriminant), SpanKgPerCount));
    }

    /// <summary>The load for trimmed counts and the zero in force, with its budget.</summary>
    public PadLoad Load(double counts, double zeroCounts, UseConditions? use = null)
    {
        use ??= UseConditions.SamePlace;
        var kg = Kg(counts - zeroCounts) * Place.CarriedTo(use.Place ?? Place).Factor;
        return new PadLoad(kg, Budget(kg, use), IsProved && kg > ProvedToKg * (1 + PadLoad.RangeMargin));
    }

    /// <summary>Everything that this calibration leaves in doubt about a load of <paramref name="kg"/>.</summary>
    public UncertaintyBudget Budget(double kg, UseConditions? use = null) =>
        CalibrationBudget.Of(this, kg, use ?? UseConditions.SamePlace);

    /// <summary>Equal content, whatever lists hold it.</summary>
    public bool Equals(PadCalibration? other) => other is not null && CalibrationText.Of(this) == CalibrationText.Of(other);

    /// <inheritdoc/>
    public override int GetHashCode() => CalibrationText.Of(this).GetHashCode(StringComparison.Ordinal);
}
