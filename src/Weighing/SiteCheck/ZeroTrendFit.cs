using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.SiteCheck;

/// <summary>
/// The trend of one zero: a straight line by least squares through what nobody touched, with a jump where a touch left one.
/// </summary>
static class ZeroTrendFit
{
    const int MostJumps = 4;
    const int LeastBetween = 8;
    const double PlainBend = 0.999;
    // A smaller jump moves no load that anybody reads. Common practice, no published source.
    const double LeastJumpKg = 0.02;

    /// <summary>The trend; nothing when the pad was left alone for too little of the time.</summary>
    public static ZeroTrend? Of(IReadOnlyList<PadMoment> moments)
    {
        var touches = TouchFinder.Find(moments);
        List<PadMoment> kept = [.. moments.Where((_, i) => !touches.Any(t => i >= t.First && i <= t.Last))];
        if (kept.Count < LeastBetween)
            return null;
        var jumps = Candidates(kept, [.. touches.Select(t => moments[t.Last].Seconds)]);
        var fit = Fit(kept, jumps);
        // Jumps that noise explains as well would only make the slope uncertain.
        jumps = [.. jumps.Where((_, k) => Math.Abs(fit.Coefficients[2 + k]) > Math.Max(LeastJumpKg, 4 * Inflation(fit) * fit.StandardDeviation(2 + k)))];
        fit = Fit(kept, jumps);
        var own = Inflation(fit) * fit.StandardDeviation(1);
        return new(new Value(60 * fit.Coefficients[1], 60 * own, fit.DegreesOfFreedom), 60 * Bend(kept, jumps), fit.ResidualSd, [.. touches.Select(Touch)]);

        PadTouch Touch((int First, int Last) touch)
        {
            var jump = jumps.IndexOf(moments[touch.Last].Seconds);
            var span = moments.Skip(touch.First).Take(touch.Last - touch.First + 1);
            var peak = span.MaxBy(m => Math.Abs(m.Kg - Before(m)));
            return new(moments[touch.First].Seconds, moments[touch.Last].Seconds, peak.Kg - Before(peak), jump >= 0 ? fit.Coefficients[2 + jump] : 0);
        }

        // Without the jump that this or a later touch made.
        double Before(PadMoment m) => fit.Coefficients[0] + fit.Coefficients[1] * m.Seconds + jumps.Select((at, k) => m.Seconds > at ? fit.Coefficients[2 + k] : 0).Sum();
    }

    // White noise would let a slope be known too well: cells and air wander. First-order correlation of the residuals.
    static double Inflation(LinearFit fit)
    {
        var r = fit.Residuals;
        var whole = r.Sum(v => v * v);
        var next = r.Zip(r.Skip(1), (a, b) => a * b).Sum();
        var correlation = whole > 0 ? Math.Clamp(next / whole, 0, 0.98) : 0;
        return Math.Sqrt((1 + correlation) / (1 - correlation));
    }

    // Per second: a drift that bends goes on as it ends, not as it was on the whole.
    static double Bend(List<PadMoment> kept, List<double> jumps)
    {
        var middle = (kept[0].Seconds + kept[^1].Seconds) / 2;
        var fit = Fit(kept, jumps, m => Math.Max(0, m.Seconds - middle));
        var column = fit.Coefficients.Count - 1;
        var (bend, uncertainty) = (fit.Coefficients[column], Inflation(fit) * fit.StandardDeviation(column));
        // Noise alone bends a short record a great deal: it has to be plain before it counts.
        return Math.Abs(bend) > Coverage.Factor(fit.DegreesOfFreedom, PlainBend) * uncertainty ? Math.Sqrt(bend * bend - uncertainty * uncertainty) : 0;
    }

    static LinearFit Fit(List<PadMoment> kept, List<double> jumps, Func<PadMoment, double>? more = null)
    {
        List<Func<int, double>> columns = [_ => 1, i => kept[i].Seconds, .. jumps.Select(at => (Func<int, double>)(i => kept[i].Seconds > at ? 1 : 0))];
        if (more is not null)
            columns.Add(i => more(kept[i]));
        return LeastSquares.Fit(Design.Of(kept.Count, [.. columns]), [.. kept.Select(m => m.Kg)]);
    }

    // A jump needs a level on either side of it.
    static List<double> Candidates(List<PadMoment> kept, IReadOnlyList<double> ends)
    {
        List<double> jumps = [];
        foreach (var end in ends)
        {
            var since = jumps.Count > 0 ? jumps[^1] : double.NegativeInfinity;
            if (jumps.Count < MostJumps && kept.Count(m => m.Seconds > since && m.Seconds <= end) >= LeastBetween && kept.Count(m => m.Seconds > end) >= LeastBetween)
                jumps.Add(end);
        }

        return jumps;
    }
}
