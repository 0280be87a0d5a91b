
namespace ScaleLink.Weighing.SiteCheck;

/// <summary>Reads four watched pads, each against the others.</summary>
static class PadOutcomes
{
    // Less cannot be told from the thermometer's own uncertainty.
    const double LeastWarmedK = 2;

    public static IReadOnlyList<PadOutcome> Of(IReadOnlyList<WatchedPad> pads)
    {
        var each = pads.Select(Own).ToList();
        return [.. each.Select(p => p with
        {
            UnlikeK = Against(p, o => o.WarmedK),
            WarmerK = Against(p, o => o.TemperatureC),
        })];

        // Not their mean: one pad in the sun would make the others look cold.
        double? Against(PadOutcome pad, Func<PadOutcome, double?> value)
        {
            var others = each.Where(o => o != pad).Select(value).OfType<double>().ToArray();
            return value(pad) is { } own && others.Length > 0 ? own - TouchFinder.Median(others) : null;
        }
    }

    static PadOutcome Own(WatchedPad pad)
    {
        var trend = ZeroTrendFit.Of(pad.Moments)
            ?? throw new DiagnosticException(new Diagnostic(SiteCheckCodes.TooShort, $"{pad.Corner} was touched or loaded for nearly all of the time.", "Clear the pads, zero, and watch again."));
        var minutes = (pad.Moments[^1].Seconds - pad.Moments[0].Seconds) / 60;
        var temperature = Ends(pad, m => m.TemperatureC);
        var (pitch, roll) = (Ends(pad, m => m.PitchDeg), Ends(pad, m => m.RollDeg));
        var warmed = temperature?.Last - temperature?.First;
        return new(pad.Corner, trend.KgPerMinute.Times(10), trend.NoiseKg, trend.Touches)
        {
            BendKgPer10Min = 10 * trend.BendKgPerMinute,
            TemperatureC = temperature?.Last,
            WarmedK = warmed,
            KgPerKelvin = warmed is { } k && Math.Abs(k) >= LeastWarmedK ? trend.KgPerMinute.Estimate * minutes / k : null,
            PitchDeg = pitch?.Last,
            RollDeg = roll?.Last,
            TiltChangeDeg = pitch is { } a && roll is { } b ? double.Hypot(a.Last - a.First, b.Last - b.First) : null,
        };
    }

    // A straight line through all of it, read at both ends: the noise of one moment is as large as what is looked for.
    static (double First, double Last)? Ends(WatchedPad pad, Func<PadMoment, double?> value)
    {
        var known = pad.Moments.Where(m => value(m) is not null).Select(m => (T: m.Seconds, V: value(m)!.Value)).ToList();
        // A sensor that failed halfway says nothing of the whole.
        if (known.Count < 3 || known.Count < 0.9 * pad.Moments.Count)
            return null;
        var (t, v) = (known.Average(k => k.T), known.Average(k => k.V));
        var slope = known.Sum(k => (k.T - t) * (k.V - v)) / known.Sum(k => (k.T - t) * (k.T - t));
        return (v + slope * (known[0].T - t), v + slope * (known[^1].T - t));
    }
}
