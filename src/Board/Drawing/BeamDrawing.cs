using ScaleLink.Api.V1;
using ScaleLink.Board.Age;

namespace ScaleLink.Board.Drawing;

/// <summary>
/// The balance of the two diagonals against the target: LF + RR on the left arm, RF + LR on the right; level is on target, and the diagonal that is too
/// heavy for it goes down. The right end is a hand on a scale of cross weight. There the target is a notch, as wide as the uncertainty of the reading.
/// </summary>
internal sealed class BeamDrawing(Judged<Loads> judged)
{
    public const double Width = 684, Height = 232;
    private const double ArmLength = 206, ArcRadius = 228, BandWidth = 18, LabelGap = 32, LeastNotchDegrees = 0.35;
    private const double LeastFromEven = 0.05;
    private static readonly Point Pivot = new(258, 100);

    private readonly Loads? _loads = judged.Message;

    public static Point LeftEnd { get; } = Pivot.Along(-ArmLength + 13, 0);

    public static string LevelLine { get; } = $"M{Svg.N(Pivot.X - ArmLength)} {Svg.N(Pivot.Y)}H{Svg.N(Pivot.X + ArmLength)}";

    public static string ScaleArc { get; } = Svg.Arc(Pivot, ArcRadius, -BeamScale.FullTiltDegrees, BeamScale.FullTiltDegrees);

    public static string Stand { get; } = $"M{Svg.N(Pivot.X)} {Svg.N(Pivot.Y + 12)}l-44 {Svg.N(Height - Pivot.Y - 24)}h88z";

    public static string LeftArm { get; } = $"M{Svg.N(Pivot.X)} {Svg.N(Pivot.Y)}H{Svg.N(Pivot.X - ArmLength + 26)}";

    public static string RightArm { get; } = $"M{Svg.N(Pivot.X)} {Svg.N(Pivot.Y)}H{Svg.N(Pivot.X + ArmLength - 22)}";

    /// <summary>A diamond whose point touches the scale.</summary>
    public static string Hand { get; } = $"M{Svg.N(Pivot.X + ArcRadius - BandWidth / 2 - 2)} {Svg.N(Pivot.Y)}l-22 15-22-15 22-15z";

    /// <summary>A hollow diamond on the scale, for what is predicted.</summary>
    public static string GhostHand { get; } = $"M{Svg.N(Pivot.X + ArcRadius + BandWidth / 2 + 2)} {Svg.N(Pivot.Y)}l-24 17-24-17 24-17z";

    /// <summary>Where it is written on the right arm that it is too heavy or too light.</summary>
    public static Point Side { get; } = new(Pivot.X + 96, Pivot.Y - 18);

    /// <summary>Cross weight less its target, percent; absent without a cross weight.</summary>
    public double? OffPercent => _loads?.CrossWeightPercent is { } cross ? cross.Estimate - Target : null;

    /// <summary>Tilt of the beam, degrees; absent without a cross weight.</summary>
    public double? TiltDegrees => OffPercent is { } off ? BeamScale.Tilt(off) : null;

    /// <summary>What is written on the beam: nothing on target, or while nothing can be told.</summary>
    public string SideWord => judged.Live?.Aim switch
    {
        Aim.High => "HIGH",
        Aim.Low => "LOW",
        _ => "",
    };

    /// <summary>Tilt of the beam at a predicted cross weight, degrees.</summary>
    public double? GhostDegrees(MeasuredValue? ahead) => ahead is null ? null : BeamScale.Tilt(ahead.Estimate - Target);

    /// <summary>The marks of the scale; none before anything is known.</summary>
    public IEnumerable<(string Tick, Point At, string Label)> Marks => _loads is null ? [] : BeamScale.Marks.Select(off =>
    {
        var tilt = BeamScale.Tilt(off);
        return (Ray(tilt, BandWidth / 2, 8), Pivot.Along(ArcRadius + LabelGap, tilt), (Target + off).ToString("0.##"));
    });

    /// <summary>Where the left end stands when both diagonals carry the same; absent where that is the target, or off the scale.</summary>
    public (string Tick, Point At)? EvenMark => _loads is not null && Math.Abs(BeamRange.Even - Target) is >= LeastFromEven and <= BeamRange.Span && BeamScale.Tilt(BeamRange.Even - Target) is var tilt
        ? (Ray(tilt, -2 * ArcRadius + 14, -12), Pivot.Along(-ArcRadius - 14, tilt))
        : null;

    /// <summary>Band of the tolerance around the target.</summary>
    public string? Tolerance => _loads?.Target is { } target ? Band(target.TolerancePercent, 0) : null;

    /// <summary>The notch in the band; absent while nothing is claimed about the reading.</summary>
    public string? Notch => Expanded is { } u ? Band(u, LeastNotchDegrees) : null;

    /// <summary>The edges of the notch.</summary>
    public string Lips => Expanded is { } u ? string.Concat(Ends(u, LeastNotchDegrees).Select(tilt => Ray(tilt, -BandWidth / 2 - 2, BandWidth + 4))) : "";

    /// <summary>A line at the target, for when nothing is claimed.</summary>
    public string? TargetLine => _loads?.Target is null ? null : Ray(0, -BandWidth / 2 - 2, BandWidth + 4);

    /// <summary>The last half percent.</summary>
    public BeamLens Lens => new(Target, _loads?.Target?.TolerancePercent, OffPercent, Expanded);

    /// <summary>The picture in words.</summary>
    public string Description => _loads?.CrossWeightPercent is { } cross
        ? $"Balance of the diagonals{(judged.Live is null ? ", held" : "")}: cross weight {ValueText.Of(cross.AsValue, Unit.Percent).Alone} %, {(OffPercent > 0 ? "RF + LR too heavy" : "LF + RR too heavy")} for {Target:0.##} %."
        : "Balance of the diagonals: no cross weight.";

    private double Target => _loads?.Target?.CrossWeightPercent ?? BeamRange.Even;

    private double? Expanded => _loads?.Target is null ? null : _loads.CrossWeightPercent?.AsValue.Expanded;

    private static string Band(double halfWidth, double leastDegrees)
    {
        var ends = Ends(halfWidth, leastDegrees);
        return Svg.Arc(Pivot, ArcRadius, ends[0], ends[1]);
    }

    private static double[] Ends(double halfWidth, double leastDegrees)
    {
        var tilt = Math.Max(leastDegrees, BeamScale.Tilt(halfWidth));
        return [-tilt, tilt];
    }

    private static string Ray(double tilt, double fromArc, double length)
    {
        var (from, to) = (Pivot.Along(ArcRadius + fromArc, tilt), Pivot.Along(ArcRadius + fromArc + length, tilt));
        return $"M{Svg.N(from.X)} {Svg.N(from.Y)}L{Svg.N(to.X)} {Svg.N(to.Y)}";
    }
}
