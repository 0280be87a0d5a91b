using System.Globalization;
using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using static ScaleLink.Measure.Sentences.Arguments;
using Sentence = ScaleLink.Measure.Sentences.Sentence;

namespace ScaleLink.Client.Doctor;

/// <summary>What a while of listening to a pad says of it.</summary>
internal static class PadChecks
{
    // Crystals of microcontrollers are good to a ten-thousandth, their ceramic oscillators to half a percent; a slave is asked at the daemon's own pace.
    private const double RateTolerance = 0.02;
    // The daemon draws straight lines over holes up to this; a longer one is no load.
    private const double LongestGapMs = 250;
    // What averaging a second leaves of the noise may take up half of the tolerance within which a load counts as settled (common practice, no published source).
    private const double NoiseShare = 0.5;
    private const double TellingLineKg = 0.02;

    /// <summary>The faults that the daemon has found by itself.</summary>
    public static IEnumerable<CheckResult> Faults(Pad pad)
    {
        var name = pad.Corner.Name();
        if (pad.Faults.Count == 0)
            yield return CheckResult.Pass("faults", name, "The daemon finds nothing wrong with it.");
        foreach (var fault in pad.Faults.Select(DiagnosticReader.Read))
            yield return CheckResult.Fail("faults", name, fault);
    }

    /// <summary>Rate, gaps, converter and noise.</summary>
    /// <param name="diagnosis">What the daemon heard.</param>
    /// <param name="toleranceKg">Within which a load counts as settled.</param>
    public static IEnumerable<CheckResult> Of(PadDiagnosis diagnosis, double toleranceKg)
    {
        var name = diagnosis.Corner.Name();
        if (diagnosis.Samples < 2)
            return [CheckResult.LeftOut("samples", name, "No samples came: rate, gaps, converter and noise could not be looked at.")];
        return [Rate(name, diagnosis), Gaps(name, diagnosis), Saturated(name, diagnosis), Frozen(name, diagnosis), Noise(name, diagnosis, toleranceKg)];
    }

    private static CheckResult Rate(string name, PadDiagnosis d)
    {
        if (!d.HasMeasuredRateHz || !d.HasStatedRateHz || d.StatedRateHz <= 0)
            return d.HasMeasuredRateHz
                ? CheckResult.Pass("rate", name, Text($"{d.MeasuredRateHz:0.#} samples a second; the pad states none."))
                : CheckResult.LeftOut("rate", name, "Too few samples.");
        return Math.Abs(d.MeasuredRateHz / d.StatedRateHz - 1) <= RateTolerance
            ? CheckResult.Pass("rate", name, Text($"{d.MeasuredRateHz:0.#} of {d.StatedRateHz:0.#} samples a second."))
            : CheckResult.Fail("rate", name, DoctorCodes.RateOff, Text($"{d.MeasuredRateHz:0.#} samples a second instead of {d.StatedRateHz:0.#}."), "Check baud rate, cable and hub; lower the pad's sample rate, or poll_hz of a slave.");
    }

    private static CheckResult Gaps(string name, PadDiagnosis d) => d.MissedSamples > 0 || d.LongestGapMs > LongestGapMs
        ? CheckResult.Fail("gaps", name, DoctorCodes.SamplesLost, Text($"{d.MissedSamples} samples lost; the longest gap was {d.LongestGapMs:0} ms."), "Check cable and hub; plug the adapter into a port of its own.")
        : CheckResult.Pass("gaps", name, Text($"None lost; the longest gap was {d.LongestGapMs:0} ms."));

    private static CheckResult Saturated(string name, PadDiagnosis d) => d.UnsoundSamples > 0
        ? CheckResult.Fail("converter range", name, DoctorCodes.SamplesUnsound, Text($"{d.UnsoundSamples} of {d.Samples} samples came from a converter at its limit or with a fault."), "Take load off the pad; with the pad empty, check its cells and their cables.")
        : CheckResult.Pass("converter range", name, "No sample at a limit.");

    // Filtered values of a coarse division are rightly the same for hours.
    private static CheckResult Frozen(string name, PadDiagnosis d) => d.Frozen && d.FreezeWatch != FreezeWatch.ByNoise
        ? CheckResult.LeftOut("converter life", name, "Not one count has changed, as it may where noise does not reach the division or is filtered away: step onto the pad and look whether its load follows.")
        : d.Frozen
        ? CheckResult.Fail("converter life", name, DoctorCodes.CountsStill, "Not one count has changed: the converter stands still.", "Restart the pad; check the wire between converter and microcontroller. A simulator without noise looks the same.")
        : CheckResult.Pass("converter life", name, "The counts move.");

    private static CheckResult Noise(string name, PadDiagnosis d, double toleranceKg)
    {
        if (!d.HasNoiseKg || !d.HasMeasuredRateHz)
            return CheckResult.LeftOut("noise", name, "The pad has no zero or no calibration: its noise is not known as a load.");
        var ofOneSecond = d.NoiseKg / Math.Sqrt(Math.Max(1, d.MeasuredRateHz));
        var line = d.Lines.Count > 0 && d.Lines[0].AmplitudeKg > TellingLineKg ? (Sentence)$" Strongest line: {Kg(d.Lines[0].AmplitudeKg):0.000} at {d.Lines[0].Hz:0.0} Hz." : default;
        Sentence noise = $"{Kg(d.NoiseKg):0.000} from sample to sample, {Kg(ofOneSecond):0.000} in the mean of a second.{line}";
        return ofOneSecond > NoiseShare * toleranceKg
            ? CheckResult.Fail("noise", name, DoctorCodes.Noisy, noise, "Keep off the pads and try again. If it stays: shield and earth of the cell cables, chargers and inverters nearby.")
            : CheckResult.Pass("noise", name, noise);
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
