namespace ScaleLink.Weighing.Pads;

/// <summary>
/// A cell reads the part of the force along its own axis, F cos(theta), where theta is the angle between that axis and the vertical.
/// A pad tilted by one degree reads 0.015 % low. Source: projection of a vertical force, see the tilt cosine in the gravity reference file.
/// </summary>
public static class TiltCorrection
{
    /// <summary>Beyond this angle the correction is refused: side force and cell bending are no longer small. Degrees; common practice, no published source.</summary>
    public const double LimitDegrees = 3.0;

    /// <summary>Cosine of the angle between the pad's normal and the vertical, for pitch about y and roll about x (ISO 8855), degrees.</summary>
    public static double Cosine(double pitchDegrees, double rollDegrees)
    {
        var (tanPitch, tanRoll) = (Math.Tan(double.DegreesToRadians(pitchDegrees)), Math.Tan(double.DegreesToRadians(rollDegrees)));
        return 1 / Math.Sqrt(1 + tanPitch * tanPitch + tanRoll * tanRoll);
    }

    /// <summary>What to add to a load of <paramref name="readKg"/>, kg; nothing when the tilt is beyond <see cref="LimitDegrees"/>.</summary>
    public static double? Size(double readKg, double pitchDegrees, double rollDegrees)
    {
        var cosine = Cosine(pitchDegrees, rollDegrees);
        return cosine >= Math.Cos(double.DegreesToRadians(LimitDegrees)) ? readKg / cosine - readKg : null;
    }
}
