using ScaleLink.Weighing.Pads;

namespace ScaleLink.Weighing.Levelling;

/// <summary>
/// How far the corrections are good. Small angles and linear springs hold well beyond these; what fails first is that a car
/// on a steep or twisted patch no longer stands like itself. Common practice, no published source.
/// </summary>
sealed record CorrectionLimits
{
    /// <summary>Largest tilt of one pad, degrees.</summary>
    public double PadTiltDeg { get; init; } = TiltCorrection.LimitDegrees;

    /// <summary>Largest slope of the patch, degrees.</summary>
    public double SlopeDeg { get; init; } = 1;

    /// <summary>Largest warp of the patch, mm.</summary>
    public double WarpMm { get; init; } = 5;
}
