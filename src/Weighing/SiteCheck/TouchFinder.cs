namespace ScaleLink.Weighing.SiteCheck;

/// <summary>Finds where an empty pad was touched: moments far from the running median, about a trend that touches cannot turn.</summary>
static class TouchFinder
{
    // A quiet pad of any make stays within this; whoever touches it does not. Common practice, no published source.
    const double LeastKg = 0.1;
    const double Sigmas = 6;
    // Nobody takes this for a drift of minutes, however long it stands there.
    const double PlainlyLoaded = 20;
    const int Wing = 30;
    const int Guard = 2;
    const int TrendPoints = 60;

    /// <summary>First and last index of each touch, in order.</summary>
    public static IReadOnlyList<(int First, int Last)> Find(IReadOnlyList<PadMoment> moments)
    {
        var rest = Detrended(moments);
        var limit = Math.Max(LeastKg, Sigmas * NoiseOf(rest));
        var middle = Median(rest);
        List<(int First, int Last)> touches = [];
        for (var i = 0; i < rest.Length; i++)
        {
            var (from, to) = (Math.Max(0, i - Wing), Math.Min(rest.Length, i + Wing + 1));
            if (Math.Abs(rest[i] - Median(rest[from..to])) <= limit && Math.Abs(rest[i] - middle) <= PlainlyLoaded * limit)
                continue;
            var (first, last) = (Math.Max(0, i - Guard), Math.Min(rest.Length - 1, i + Guard));
            if (touches is [.., var before] && first <= before.Last + 1)
                touches[^1] = before with { Last = last };
            else
                touches.Add((first, last));
        }

        return touches;
    }

    /// <summary>Standard deviation by the median of differences, which drift, touches and jumps hardly move.</summary>
    public static double NoiseOf(double[] values) =>
        values.Length < 2 ? 0 : Median([.. values.Zip(values.Skip(1), (a, b) => Math.Abs(b - a))]) / (0.6745 * Math.Sqrt(2));

    // The median of all slopes between medians of stretches (Theil 1950, Sen 1968): under three tenths of touched moments do not turn it.
    static double[] Detrended(IReadOnlyList<PadMoment> moments)
    {
        var stretch = Math.Max(1, moments.Count / TrendPoints);
        var points = moments.Chunk(stretch).Select(c => (T: Median([.. c.Select(m => m.Seconds)]), Kg: Median([.. c.Select(m => m.Kg)]))).ToList();
        List<double> slopes = [];
        for (var i = 0; i < points.Count; i++)
            for (var j = i + 1; j < points.Count; j++)
                slopes.Add((points[j].Kg - points[i].Kg) / (points[j].T - points[i].T));
        var slope = slopes.Count > 0 ? Median([.. slopes]) : 0;
        return [.. moments.Select(m => m.Kg - slope * m.Seconds)];
    }

    public static double Median(double[] values)
    {
        var sorted = (double[])values.Clone();
        Array.Sort(sorted);
        return sorted.Length % 2 == 1 ? sorted[sorted.Length / 2] : (sorted[sorted.Length / 2 - 1] + sorted[sorted.Length / 2]) / 2;
    }
}
