using ScaleLink.Api.V1;
using ScaleLink.Board.Readings;

namespace ScaleLink.Board.Drawing;

/// <summary>Places of the trace: settles from left to right, the present at the right edge, percent upwards.</summary>
internal sealed record TraceScale(double Lowest, double Highest, int First, int Count)
{
    public const double Width = 420, Height = 266, Left = 52, Right = 400, Top = 14, Bottom = 222;
    private const int MostShown = 9;
    private const double LeastSpan = 0.5;
    private static readonly double[] Steps = [0.1, 0.2, 0.5, 1, 2, 5, 10];

    public static TraceScale For(IReadOnlyList<Settle> settles, Target? target, params IEnumerable<double?> ahead)
    {
        var shown = settles.TakeLast(MostShown).ToList();
        List<double> values = [.. shown.SelectMany(s => new[] { s.CrossWeightPercent - s.ExpandedPercent, s.CrossWeightPercent + s.ExpandedPercent })];
        if (target is not null)
            values.AddRange([target.CrossWeightPercent - target.TolerancePercent, target.CrossWeightPercent + target.TolerancePercent]);
        values.AddRange([.. ahead.Concat(shown.Select(s => s.PredictedPercent)).OfType<double>()]);
        if (values.Count == 0)
            values.Add(BeamRange.Even);
        var (low, high) = (values.Min(), values.Max());
        var room = Math.Max((high - low) * 0.08, (LeastSpan - (high - low)) / 2);
        return new TraceScale(low - room, high + room, shown.Count > 0 ? shown[0].Number : 0, shown.Count);
    }

    public double X(int number) => Left + 24 + (number - First) * (Right - Left - 48) / Math.Max(4, Count);

    /// <summary>Where the present and what is predicted stand: one place after the last settle.</summary>
    public double XNow => X(First + Count);

    public double Y(double percent) => Bottom - (Math.Clamp(percent, Lowest, Highest) - Lowest) / (Highest - Lowest) * (Bottom - Top);

    /// <summary>A hollow diamond.</summary>
    public static string Diamond(double x, double y) => $"M{Svg.N(x)} {Svg.N(y - 7)}l7 7-7 7-7-7z";

    /// <summary>Round marks, at most five.</summary>
    public IEnumerable<double> Marks
    {
        get
        {
            var step = Steps.FirstOrDefault(s => (Highest - Lowest) / s <= 5, Steps[^1]);
            for (var mark = Math.Ceiling(Lowest / step) * step; mark <= Highest; mark += step)
                yield return mark;
        }
    }
}
