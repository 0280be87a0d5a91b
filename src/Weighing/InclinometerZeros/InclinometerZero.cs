using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.InclinometerZeros;

/// <summary>What a pad's inclinometer says on level ground, by a reversal test, and how the ground of that test tilted.</summary>
/// <param name="PitchDeg">Degrees, in the pad's own axes: subtract it from its readings.</param>
/// <param name="RollDeg">The same about the other axis.</param>
/// <param name="StandardUncertaintyDeg">Of either, degrees.</param>
/// <param name="GroundPitchDeg">Pitch of the ground under the pad as it lay first, degrees.</param>
/// <param name="GroundRollDeg">Roll of the ground, degrees.</param>
sealed record InclinometerZero(double PitchDeg, double RollDeg, double StandardUncertaintyDeg, double GroundPitchDeg, double GroundRollDeg)
{
    /// <summary>
    /// One standard uncertainty of the zero of an inclinometer that was never tested, degrees: within half a degree either way, as a
    /// sensor is screwed into a pad by hand. Common practice, no published source.
    /// </summary>
    public static double UntestedDeg { get; } = TypeB.Rectangular(0.5);
}
