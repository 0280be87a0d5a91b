using ScaleLink.Api.V1;

namespace ScaleLink.Client.Terminal;

/// <summary>The scale of the beam: level at 50 %, and just wide enough for value and target.</summary>
internal sealed record BeamScale(double SpanPercent, int Centre, int HalfWidth)
{
    private const double Level = 50;
    private const double Room = 1.1;
    private static readonly double[] Spans = [0.5, 1, 2, 3, 5, 10, 20, 50];

    public static BeamScale For(Loads loads, int width)
    {
        var farthest = 0.0;
        if (loads.CrossWeightPercent is { } cross)
            farthest = Math.Abs(cross.Estimate - Level);
        if (loads.Target is { } target)
            farthest = Math.Max(farthest, Math.Abs(target.CrossWeightPercent - Level) + target.TolerancePercent);
        var span = Spans.FirstOrDefault(s => s >= farthest * Room, Spans[^1]);
        return new BeamScale(span, width / 2, width / 2 - 5);
    }

    /// <summary>Column of a cross weight, cut off at the ends.</summary>
    public int ColumnOf(double percent) => Centre + (int)Math.Round(Math.Clamp(Tilt(percent), -1, 1) * HalfWidth);

    /// <summary>Distance from level as a part of the span; right arm, RF + LR, down is positive.</summary>
    public double Tilt(double percent) => (percent - Level) / SpanPercent;

    /// <summary>The five marks of the scale, percent.</summary>
    public IEnumerable<double> Marks => Enumerable.Range(-2, 5).Select(i => Level + i * SpanPercent / 2);

    /// <summary>The notch at the target: as wide as the uncertainty to either side, never narrower than one column.</summary>
    public (int First, int Last)? Notch(Loads loads)
    {
        if (loads.Target is not { } target || loads.CrossWeightPercent?.AsValue.Expanded is not { } expanded)
            return null;
        return (ColumnOf(target.CrossWeightPercent - expanded), ColumnOf(target.CrossWeightPercent + expanded));
    }
}
