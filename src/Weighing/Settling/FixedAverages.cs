namespace ScaleLink.Weighing.Settling;

/// <summary>
/// What is said when the motion does not die away as a rocking car's does: an engine that runs, wind, somebody who keeps moving.
/// Two averages that assume nothing; the one with the smaller uncertainty speaks.
/// </summary>
sealed class FixedAverages
{
    /// <summary>Blocks in the newest second, held against the average to notice a change.</summary>
    public const int NewestSecond = 20;

    const double WidestKg = 5;

    readonly CascadeAverage _cascade = new();
    readonly LongAverage _long = new();

    /// <summary>A claim from blocks that all lie after the last event, or null.</summary>
    /// <param name="history">The blocks.</param>
    /// <param name="since">First block after the last event.</param>
    public ILoadClaim? Claim(BlockHistory history, int since)
    {
        if (history.Count - since < LongAverage.Length) return null;
        _cascade.Update(history);
        _long.Update(history);
        var narrower = Widest(_cascade) <= Widest(_long) ? (ILoadClaim)_cascade : _long;
        return Widest(narrower) <= WidestKg ? narrower : null;
    }

    static double Widest(ILoadClaim claim) => 2 * claim.StandardUncertainty.Largest();
}
