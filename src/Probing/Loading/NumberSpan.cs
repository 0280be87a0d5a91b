namespace ScaleLink.Probing.Loading;

/// <summary>Mean and standard deviation of one number over a span of time; both are not numbers where the number was none.</summary>
internal readonly record struct NumberSpan(double Mean, double Noise)
{
    public static NumberSpan Of(IEnumerable<double> values)
    {
        var all = values.ToList();
        var mean = all.Sum() / all.Count;
        return new NumberSpan(mean, Math.Sqrt(all.Sum(v => (v - mean) * (v - mean)) / Math.Max(1, all.Count - 1)));
    }
}
