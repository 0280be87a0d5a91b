namespace ScaleLink.Weighing.Pads;

/// <summary>
/// A cell reads the part of the force along its own axis, F cos(theta), where theta is the angle between that axis and the vertical.
/// A pad tilted by one degree reads 0.015 % low. Source: projection of a vertical force, see the tilt cosine in the gravity reference file.
/// </summary>
static class TiltCorrection
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

    /// <summary>
    /// What uncertainty about the tilt leaves in the correction, kg, one standard uncertainty. The correction grows with the square of the
    /// tilt, so the second order counts near level. Source: JCGM 100:2008 (GUM) 5.1.2 with its note, for normal errors alike about both axes.
    /// </summary>
    /// <param name="readKg">Load as read, kg.</param>
    /// <param name="pitchDegrees">Degrees.</param>
    /// <param name="rollDegrees">Degrees.</param>
    /// <param name="uncertaintyDegrees">One standard uncertainty of either angle, degrees.</param>
    public static double Uncertainty(double readKg, double pitchDegrees, double rollDegrees, double uncertaintyDegrees)
    {
        var (tilt, u) = (double.DegreesToRadians(double.Hypot(pitchDegrees, rollDegrees)), double.DegreesToRadians(uncertaintyDegrees));
        // Size = F (p^2 + r^2) / 2: root of the mean square of what errors in p and r do to it.
        return Math.Abs(readKg) * u * Math.Sqrt(tilt * tilt + 2 * u * u);
    }
}
