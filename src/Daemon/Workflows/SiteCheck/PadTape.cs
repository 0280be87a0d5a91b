using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Measure;
using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.SiteCheck;

namespace ScaleLink.Daemon.Workflows.SiteCheck;

/// <summary>What one pad said second by second while it was watched.</summary>
internal sealed class PadTape(PadChannel pad, string serialNumber, PadCalibration? calibration, double zeroKg)
{
    private readonly List<PadMoment> _moments = [];

    public Corner Corner => pad.Corner;

    /// <summary>Seconds in a row without a load.</summary>
    public int Missing { get; private set; }

    /// <summary>Seconds in a row with something heavy on it.</summary>
    public int Loaded { get; private set; }

    /// <summary>Takes the second that ends at <paramref name="atNs"/>.</summary>
    public void Take(long atNs, double seconds, double heavyKg)
    {
        var block = pad.Block(atNs - Nanoseconds.PerSecond, atNs);
        var seen = pad.Snapshot();
        if (block is not { LoadKg: { } load, ZeroKg: { } zero } || seen.Identity?.SerialNumber != serialNumber)
        {
            Missing++;
            return;
        }

        // A zero taken meanwhile, and zero tracking, would hide the drift.
        var kg = load - (zero - zeroKg);
        (Missing, Loaded) = (0, Math.Abs(kg) >= heavyKg ? Loaded + 1 : 0);
        _moments.Add(new PadMoment(seconds, kg, seen.TemperatureCelsius, seen.PitchDegrees, seen.RollDegrees));
    }

    /// <summary>For the judge.</summary>
    /// <param name="expectedKg">Load of the car that is expected.</param>
    /// <param name="here">Where the bay stands.</param>
    /// <param name="untilSeconds">Later moments are left out.</param>
    public WatchedPad Watched(double expectedKg, Place here, double untilSeconds)
    {
        var terms = calibration?.Budget(expectedKg, new UseConditions(here)).Terms ?? [];
        return new WatchedPad(Corner, [.. _moments.Where(m => m.Seconds <= untilSeconds)])
        {
            // Temperature has a part of its own.
            CalibrationKg = Math.Sqrt(terms.Where(t => t.Name != BudgetTerms.Temperature).Sum(t => t.StandardUncertainty * t.StandardUncertainty)),
            IsCalibrated = calibration?.IsCalibrated == true,
            CalibratedAtC = calibration?.TemperatureC,
            SpanPerKelvin = calibration?.Errors.SpanPerKelvin,
            TiltIsCorrected = pad.Configuration.CorrectTilt,
            TiltUncertaintyDeg = SavedInclinometerZero.UncertaintyDeg(pad.Snapshot().InclinometerZero),
        };
    }
}
