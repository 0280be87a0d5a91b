namespace ScaleLink.Api.V1;

public sealed partial class Session
{
    /// <summary>
    /// Live loads as this session takes them: the uncertainty of cross weight has in it by how much one settle differs from the next, so that a single
    /// settle is not judged more surely than the session judges all of them. The same loads where nothing is known of that, or nothing is claimed.
    /// </summary>
    /// <param name="loads">Loads of the bay in which the session goes on.</param>
    public Loads Seen(Loads loads)
    {
        ArgumentNullException.ThrowIfNull(loads);
        if (Standing is not { RepeatabilityPercent: > 0 } standing || loads.CrossWeightPercent?.AsValue is not { StandardUncertainty: { } reading } cross)
            return loads;
        var (settling, freedom) = (standing.RepeatabilityPercent, standing.RepeatabilityDegreesOfFreedom);
        var u = Math.Sqrt(reading * reading + settling * settling);
        // Welch and Satterthwaite (JCGM 100:2008, G.4.1).
        var others = cross.DegreesOfFreedom is { } few ? Math.Pow(reading, 4) / few : 0;
        return new Loads(loads) { CrossWeightPercent = MeasuredValue.Of(cross with { StandardUncertainty = u, DegreesOfFreedom = Math.Pow(u, 4) / (Math.Pow(settling, 4) / freedom + others) }) };
    }

    /// <summary>Whether somebody of this name has read the cautions of this session.</summary>
    public bool HasRead(string who) => CautionsRead.Any(c => string.Equals(c.Who, who?.Trim(), StringComparison.OrdinalIgnoreCase));

    /// <summary>
    /// What stands about the target by all settles since the last turn, as long as nothing was turned since and the car stands as it was weighed. Nothing
    /// otherwise: then the present reading speaks for itself.
    /// </summary>
    /// <param name="seen">Live loads, <see cref="Seen"/> by this session.</param>
    public Standing? StandsNow(Loads seen) =>
        Standing is { CrossWeightPercent: { } mean } standing && OpenAdjustments.Count == 0 && State is SessionState.Planning or SessionState.Finishing
        && seen?.CrossWeightPercent?.AsValue is { Expanded: { } expanded } now && Math.Abs(now.Estimate - mean.Estimate) <= expanded ? standing : null;
}
