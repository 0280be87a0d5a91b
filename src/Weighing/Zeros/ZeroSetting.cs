using ScaleLink.Weighing.Pads;

namespace ScaleLink.Weighing.Zeros;

/// <summary>How far a weighed zero may lie from the reference, and what a reading must keep to.</summary>
sealed record ZeroLimits
{
    /// <summary>
    /// Share of the capacity either way. OIML R 76-1:2006, 4.5.1, allows 4 % of Max in all for zero setting.
    /// </summary>
    public double CapacityShare { get; init; } = 0.02;

    /// <summary>
    /// Without a reference the counts themselves must stay within this share of the capacity: platform and bridge offset
    /// together make a few percent, a wheel of a light car more than ten (common practice, no published source). Infinity
    /// when somebody vouches for the empty pad.
    /// </summary>
    public double FirstShare { get; init; } = 0.08;

    /// <summary>For the reading itself.</summary>
    public ReadingLimits Reading { get; init; } = new();
}

/// <summary>A zero that was taken.</summary>
/// <param name="Counts">Trimmed counts of the empty pad.</param>
/// <param name="ShiftKg">From the reference; null where there was none.</param>
sealed record FoundZero(double Counts, double? ShiftKg);

/// <summary>Judges whether a reading may become the pad's zero.</summary>
static class ZeroSetting
{
    /// <summary>The zero, or why not.</summary>
    /// <param name="calibration">In effect.</param>
    /// <param name="reading">Of the pad that is said to be empty.</param>
    /// <param name="limits">What to keep to.</param>
    /// <param name="referenceCounts">
    /// Counts the empty pad should have: the zero of the calibration procedure. Null before the first zero of a pad that was never
    /// calibrated; then only the size of the counts speaks, and whoever asks must look.
    /// </param>
    public static (FoundZero? Zero, IReadOnlyList<Diagnostic> Refusals) Judge(
        PadCalibration calibration, PadReading reading, ZeroLimits limits, double? referenceCounts)
    {
        ArgumentNullException.ThrowIfNull(calibration);
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(limits);
        var refusals = ReadingCheck.Of(reading, calibration.CellTrim.Count, limits.Reading);
        // Under a car that still rocks, "wait" would be the wrong advice: what stands on the pad is said first.
        if (refusals.Any(r => r.Code != CalibrationCodes.Unsettled))
            return (null, refusals);

        var counts = calibration.Counts([.. reading.CellCounts]);
        double? shift = referenceCounts is { } reference ? calibration.Kg(counts - reference) : null;
        if (Loaded(calibration, counts, shift, limits) is { } loaded)
            return (null, [loaded, .. refusals]);
        return refusals.Count > 0 ? (null, refusals) : (new FoundZero(counts, shift), []);
    }

    private static Diagnostic? Loaded(PadCalibration calibration, double counts, double? shift, ZeroLimits limits)
    {
        if (shift is { } kg)
        {
            var limit = limits.CapacityShare * calibration.CapacityKg;
            return Math.Abs(kg) > limit ? CalibrationCodes.ZeroLoaded.Because($"{Kg(kg):+0.00} from the reference zero, at most {Kg(limit):0.00} either way") : null;
        }
        var whole = Math.Abs(calibration.Kg(counts));
        return whole > limits.FirstShare * calibration.CapacityKg
            ? CalibrationCodes.FirstZeroLoaded.Because($"{Kg(whole):0.0} of {Kg(calibration.CapacityKg):0.#}, at most {limits.FirstShare:P0} of it is usual")
            : null;
    }
}
