using System.Text.Json.Serialization;
using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Pads;

/// <summary>How a calibration came about.</summary>
enum CalibrationStanding
{
    /// <summary>From configuration or a data sheet: loads are nominal only.</summary>
    [JsonStringEnumMemberName("Starting")]
    Nominal,
    /// <summary>From known masses on this pad.</summary>
    [JsonStringEnumMemberName("Proved")]
    Calibrated,
}

/// <summary>
/// What turns a pad's counts into kilograms, with what is known of its errors. Immutable; its identity is a hash of its
/// content. The load is <c>(Span x + Curvature x²) g_calibration / g_use</c>, x being trimmed counts above the zero in effect.
/// </summary>
sealed record PadCalibration
{
    /// <summary>Serial number of the pad.</summary>
    public required string Pad { get; init; }

    /// <summary>Starting or calibrated.</summary>
    public required CalibrationStanding Standing { get; init; }

    /// <summary>Trimmed counts of the empty pad at the calibration procedure. In service the zero in effect takes its place.</summary>
    public required double ZeroCounts { get; init; }

    /// <summary>Standard uncertainty of <see cref="ZeroCounts"/>.</summary>
    public double ZeroUncertaintyCounts { get; init; }

    /// <summary>Slope at zero, kg per count; negative where cells are wired in reverse.</summary>
    public required double SpanKgPerCount { get; init; }

    /// <summary>Half the second derivative, kg per count squared; zero for a straight pad.</summary>
    public double CurvatureKgPerCount2 { get; init; }

    /// <summary>Covariance by repeatability of the points; for a nominal sensitivity, by the stated uncertainty.</summary>
    [JsonPropertyName("scatter")]
    public CurveCovariance Repeatability { get; init; }

    /// <summary>Degrees of freedom of <see cref="Repeatability"/>; null for many.</summary>
    [JsonPropertyName("scatterDegreesOfFreedom")]
    public double? RepeatabilityDegreesOfFreedom { get; init; }

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

    /// <summary>Highest load of the calibration procedure, kg; zero for a nominal sensitivity.</summary>
    [JsonPropertyName("provedToKg")]
    public double CalibratedToKg { get; init; }

    /// <summary>Where it was calibrated; for a nominal sensitivity, where it is used.</summary>
    public required Place Place { get; init; }

    /// <summary>When, UTC.</summary>
    public required DateTimeOffset Time { get; init; }

    /// <summary>Who calibrated it.</summary>
    public string Who { get; init; } = "";

    /// <summary>Temperature of the pad at the calibration procedure, °C.</summary>
    public double? TemperatureC { get; init; }

    /// <summary>True once calibrated with masses.</summary>
    [JsonPropertyName("isProved")]
    public bool IsCalibrated => Standing == CalibrationStanding.Calibrated;

    /// <summary>False where nobody knows yet how many kilograms a count is: the pad gives no load, and a calibration procedure finds it.</summary>
    [JsonIgnore]
    public bool HasSensitivity => SpanKgPerCount != 0;

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
            Standing = CalibrationStanding.Nominal,
            ZeroCounts = 0,
            SpanKgPerCount = kgPerCount,
            Repeatability = new CurveCovariance(u * u, 0, 0),
            CellTrim = [.. Enumerable.Repeat(1.0, cells)],
            CapacityKg = capacityKg,
            Place = place,
            Time = time,
        };
    }

    /// <summary>A pad of which only capacity and cells are known, for its first calibration procedure.</summary>
    public static PadCalibration WithoutSensitivity(string pad, double capacityKg, int cells, Place place) => new()
    {
        Pad = pad,
        Standing = CalibrationStanding.Nominal,
        ZeroCounts = 0,
        SpanKgPerCount = 0,
        CellTrim = [.. Enumerable.Repeat(1.0, cells)],
        CapacityKg = capacityKg,
        Place = place,
        Time = DateTimeOffset.UnixEpoch,
    };

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

    /// <summary>Load in kg at <paramref name="countsAboveZero"/>, where it was calibrated.</summary>
    public double Kg(double countsAboveZero) => countsAboveZero * (SpanKgPerCount + CurvatureKgPerCount2 * countsAboveZero);

    /// <summary>Counts above zero that a load in kg gives, where it was calibrated.</summary>
    public double CountsAboveZero(double kg)
    {
        // The root near kg / span, written so that nothing cancels when the curvature is small.
        var discriminant = Math.Max(0, SpanKgPerCount * SpanKgPerCount + 4 * CurvatureKgPerCount2 * kg);
        return 2 * kg / (SpanKgPerCount + Math.CopySign(Math.Sqrt(discriminant), SpanKgPerCount));
    }

    /// <summary>The load for trimmed counts and the zero in effect, with its budget.</summary>
    public PadLoad Load(double counts, double zeroCounts, UseConditions? use = null)
    {
        use ??= UseConditions.SamePlace;
        var kg = Kg(counts - zeroCounts) * Place.CarriedTo(use.Place ?? Place).Factor;
        return new PadLoad(kg, Budget(kg, use), IsCalibrated && kg > CalibratedToKg * (1 + PadLoad.RangeMargin));
    }

    /// <summary>Everything that this calibration leaves uncertain about a load of <paramref name="kg"/>.</summary>
    public UncertaintyBudget Budget(double kg, UseConditions? use = null) =>
        CalibrationBudget.Of(this, kg, use ?? UseConditions.SamePlace);

    /// <summary>Equal content, whatever lists hold it.</summary>
    public bool Equals(PadCalibration? other) => other is not null && CalibrationText.Of(this) == CalibrationText.Of(other);

    /// <inheritdoc/>
    public override int GetHashCode() => CalibrationText.Of(this).GetHashCode(StringComparison.Ordinal);
}
