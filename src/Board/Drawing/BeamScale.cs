namespace ScaleLink.Board.Drawing;

/// <summary>
/// The scale of the beam, always the same: level on the target, full tilt where cross weight is three percent beside it. What is left of the last half
/// percent shows under a lens.
/// </summary>
internal static class BeamScale
{
    /// <summary>Tilt at the end of the scale.</summary>
    public const double FullTiltDegrees = 16;

    /// <summary>The marks of the scale, percent beside the target.</summary>
    public static IReadOnlyList<double> Marks { get; } = [-BeamRange.Span, -1, 0, 1, BeamRange.Span];

    /// <summary>Tilt so far beside the target, degrees, right arm down positive; stops at the ends.</summary>
    public static double Tilt(double offPercent) => Math.Clamp(offPercent / BeamRange.Span, -1, 1) * FullTiltDegrees;
}
