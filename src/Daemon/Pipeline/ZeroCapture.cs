namespace ScaleLink.Daemon.Pipeline;

/// <summary>Takes a zero of one pad, or says why not.</summary>
public sealed class ZeroCapture(BayClock clock, IZeroStore store)
{
    private const long WindowNs = Nanoseconds.PerSecond;
    private const int FewestSamples = 8;
    // An empty pad's zero stays within 2 % of its capacity either way: the zero-setting range of OIML R 76-1:2006 (4 % overall).
    private const double MostShiftOfCapacity = 0.02;
    // Half of the window against the other half: a foot on the pad, or a car being rolled off, shows as a drift. kg.
    private const double MostDriftKg = 0.1;
    private const double MostSpreadKg = 1.0;

    /// <summary>Takes the mean of the last second as zero and writes it to the ledger.</summary>
    public (ZeroPoint? Zero, Fault? Refused) Take(PadChannel pad, string who)
    {
        ArgumentNullException.ThrowIfNull(pad);
        if (pad.Recent(WindowNs) is not { } recent || recent.Counts.Length < FewestSamples)
            return Refuse("SL-343", $"{pad.Corner} is not live.", "Mend its link first, then zero again.");
        var scale = pad.Configuration.KgPerCount is { } kg ? Math.Abs(kg) : recent.Identity.CapacityKg / 1e6;
        var (mean, spread, drift) = Describe(recent.Counts);
        if (drift * scale > MostDriftKg || spread * scale > MostSpreadKg)
            return Refuse("SL-344", $"{pad.Corner} is not quiet: it moved by {drift * scale:0.00} kg within a second.", "Keep off the pads and wait until they are still.");
        var shift = pad.Zero is { } old ? (mean - old.Counts) * pad.Configuration.KgPerCount : null;
        if (Math.Abs(shift ?? 0) > MostShiftOfCapacity * recent.Identity.CapacityKg)
            return Refuse("SL-345", $"{pad.Corner} reads {shift:0.0} kg from its last zero: something is on it.", "Take everything off the pad. If it is empty, the pad has changed: prove it again.");
        var zero = new ZeroPoint(recent.Identity.SerialNumber, mean, clock.ToUtc(clock.NowNs), who, shift);
        store.Append(zero);
        pad.Adopt(zero);
        return (zero, null);
    }

    private (ZeroPoint?, Fault?) Refuse(string code, string message, string mend) => (null, new Fault(code, message, mend, clock.NowNs));

    private static (double Mean, double Spread, double Drift) Describe(double[] counts)
    {
        var mean = counts.Average();
        var half = counts.Length / 2;
        var spread = Math.Sqrt(counts.Sum(c => (c - mean) * (c - mean)) / (counts.Length - 1));
        return (mean, spread, Math.Abs(counts[..half].Average() - counts[half..].Average()));
    }
}
