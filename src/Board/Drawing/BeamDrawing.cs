using ScaleLink.Api.V1;
using ScaleLink.Board.Age;

namespace ScaleLink.Board.Drawing;

/// <summary>
/// The balance of the two diagonals: LF + RR on the left arm, RF + LR on the right; the heavier goes down by the real difference.
/// The right end is a hand on a scale of cross weight. There the target is a notch, as wide as the uncertainty of the reading.
/// </summary>
internal sealed class BeamDrawing(Judged<Loads> judged, BeamScale scale)
{
    public const double Width = 684, Height = 232;
    private const double ArmLength = 262, ArcRadius = 284, BandWidth = 18, LabelGap = 30, LeastNotchDegrees = 0.35;
    private static readonly Point Pivot = new(278, 100);

    private readonly Loads? _loads = judged.Message;

    public static Point LeftEnd { get; } = Pivot.Along(-ArmLength + 13, 0);

    public static string LevelLine { get; } = $"M{Svg.N(Pivot.X - ArmLength)} {Svg.N(Pivot.Y)}H{Svg.N(Pivot.X + ArmLength)}";

    public static string ScaleArc { get; } = Svg.Arc(Pivot, ArcRadius, -BeamScale.FullTiltDegrees, BeamScale.FullTiltDegrees);

    public static string Stand { get; } = $"M{Svg.N(Pivot.X)} {Svg.N(Pivot.Y + 12)}l-44 {Svg.N(Height - Pivot.Y - 24)}h88z";

    public static string LeftArm { get; } = $"M{Svg.N(Pivot.X)} {Svg.N(Pivot.Y)}H{Svg.N(Pivot.X - ArmLength + 26)}";

    public static string RightArm { get; } = $"M{Svg.N(Pivot.X)} {Svg.N(Pivot.Y)}H{Svg.N(Pivot.X + ArmLength - 22)}";

    /// <summary>A diamond whose point touches the scale.</summary>
    public static string Hand { get; } = $"M{Svg.N(Pivot.X + ArcRadius - BandWidth / 2 - 2)} {Svg.N(Pivot.Y)}l-22 15-22-15 22-15z";

    /// <summary>Tilt of the beam, degrees; absent without a cross weight.</summary>
    public double? TiltDegrees => _loads?.CrossWeightPercent is { } cross ? scale.Tilt(cross.Estimate) : null;

    /// <summary>A hollow diamond on the scale, for what is predicted.</summary>
    public static string GhostHand { get; } = $"M{Svg.N(Pivot.X + ArcRadius + BandWidth / 2 + 2)} {Svg.N(Pivot.Y)}l-24 17-24-17 24-17z";

    /// <summary>Tilt of the beam at a predicted cross weight, degrees.</summary>
    public double? GhostDegrees(MeasuredValue? ahead) => ahead is null ? null : scale.Tilt(ahead.Estimate);

    /// <summary>The marks of the scale; none before anything is known.</summary>
    public IEnumerable<(string Tick, Point At, string Label)> Marks => _loads is null ? [] : scale.Marks.Select(mark =>
    {
        var tilt = scale.Tilt(mark);
        return (Ray(tilt, BandWidth / 2, 8), Pivot.Along(ArcRadius + LabelGap, tilt), scale.Label(mark));
    });

    /// <summary>Band of the tolerance around the target.</summary>
    public string? Tolerance => _loads?.Target is { } target ? Band(target.CrossWeightPercent, target.TolerancePercent, 0) : null;

    /// <summary>The notch in the band; absent while nothing is claimed about the reading.</summary>
    public string? Notch => Interval is { } u ? Band(_loads!.Target.CrossWeightPercent, u, LeastNotchDegrees) : null;

    /// <summary>The edges of the notch.</summary>
    public string Lips => Interval is { } u
        ? string.Concat(Ends(_loads!.Target.CrossWeightPercent, u, LeastNotchDegrees).Select(tilt => Ray(tilt, -BandWidth / 2 - 2, BandWidth + 4)))
        : "";

    /// <summary>A line at the target, for when nothing is claimed.</summary>
    public string? TargetLine => _loads?.Target is { } target ? Ray(scale.Tilt(target.CrossWeightPercent), -BandWidth / 2 - 2, BandWidth + 4) : null;

    /// <summary>The picture in words.</summary>
    public string Description => _loads?.CrossWeightPercent is { } cross
        ? $"Balance of the diagonals{(judged.Live is null ? ", held" : "")}: cross weight {ValueText.Of(cross.AsValue, Unit.Percent).Alone} %, {(cross.Estimate > BeamScale.Level ? "RF + LR is the heavier" : "LF + RR is the heavier")}."
        : "Balance of the diagonals: no cross weight.";

    private double? Interval => _loads?.Target is null ? null : _loads.CrossWeightPercent?.AsValue.Expanded;

    private string Band(double centre, double halfWidth, double leastDegrees)
    {
        var ends = Ends(centre, halfWidth, leastDegrees);
        return Svg.Arc(Pivot, ArcRadius, ends[0], ends[1]);
    }

    private double[] Ends(double centre, double halfWidth, double leastDegrees)
    {
        var (from, to) = (scale.Tilt(centre - halfWidth), scale.Tilt(centre + halfWidth));
        var lacking = Math.Max(0, leastDegrees - (to - from) / 2);
        return [from - lacking, to + lacking];
    }

    private static string Ray(double tilt, double fromArc, double length)
    {
        var (from, to) = (Pivot.Along(ArcRadius + fromArc, tilt), Pivot.Along(ArcRadius + fromArc + length, tilt));
        return $"M{Svg.N(from.X)} {Svg.N(from.Y)}L{Svg.N(to.X)} {Svg.N(to.Y)}";
    }
}
