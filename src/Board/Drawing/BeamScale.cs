using ScaleLink.Api.V1;

namespace ScaleLink.Board.Drawing;

/// <summary>The scale of the beam: level at 50 %, full tilt at <paramref name="SpanPercent"/> beyond.</summary>
internal sealed record BeamScale(double SpanPercent)
{
    public const double Level = 50;
    /// <summary>Tilt at the end of the scale.</summary>
    public const double FullTiltDegrees = 16;

    // Room at the ends before the scale widens, and much more of it before it narrows again: it must not flicker between two.
    private const double RoomToStay = 1.02;
    private const double RoomToTake = 1.3;
    private static readonly double[] Spans = [0.5, 1, 2, 3, 5, 10, 20, 50];

    public static BeamScale Widest { get; } = new(Spans[^1]);

    /// <summary>The scale for these loads: this one as long as it fits and none much finer would, or while there is no cross weight.</summary>
    public BeamScale For(Loads loads, double? aheadPercent = null)
    {
        if (loads.CrossWeightPercent is null && this != Widest)
            return this;
        var farthest = loads.CrossWeightPercent is { } cross ? Math.Abs(cross.Estimate - Level) : 0;
        if (aheadPercent is { } ahead)
            farthest = Math.Max(farthest, Math.Abs(ahead - Level));
        if (loads.Target is { } target)
            farthest = Math.Max(farthest, Math.Abs(target.CrossWeightPercent - Level) + target.TolerancePercent);
        var wanted = Spans.FirstOrDefault(s => s >= farthest * RoomToTake, Spans[^1]);
        return wanted < SpanPercent || farthest * RoomToStay > SpanPercent ? new BeamScale(wanted) : this;
    }

    /// <summary>Tilt for a cross weight, degrees, right arm down positive; stops at the ends.</summary>
    public double Tilt(double percent) => Math.Clamp((percent - Level) / SpanPercent, -1, 1) * FullTiltDegrees;

    /// <summary>The marks of the scale, percent.</summary>
    public IEnumerable<double> Marks => Enumerable.Range(-2, 5).Select(k => Level + k * SpanPercent / 2);

    public string Label(double mark) => mark.ToString(SpanPercent < 1 ? "0.00" : SpanPercent < 5 ? "0.0" : "0.#");
}
