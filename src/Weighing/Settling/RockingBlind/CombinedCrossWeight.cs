namespace ScaleLink.Weighing.Settling.RockingBlind;

/// <summary>Joins cross weight from the settled loads with the rocking-blind one.</summary>
static class CombinedCrossWeight
{
    const double Disagreement = 3;

    /// <summary>
    /// The mean weighted by uncertainty; the only one when the other claims nothing. When the two lie apart by more than three
    /// combined uncertainties, total or centre of gravity have moved since the reference was taken: the settled loads speak alone.
    /// </summary>
    /// <param name="settled">From the settled loads, percent; without uncertainty when nothing is claimed.</param>
    /// <param name="blind">Rocking-blind, percent; null without a reference.</param>
    public static Value? Of(Value? settled, Value? blind)
    {
        if (settled is not { StandardUncertainty: { } a }) return blind ?? settled;
        if (blind is not { StandardUncertainty: { } b }) return settled;
        var apart = settled.Value.Estimate - blind.Value.Estimate;
        var sum = a * a + b * b;
        if (sum == 0 || apart * apart > Disagreement * Disagreement * sum) return settled;
        var share = b * b / sum;
        return new(blind.Value.Estimate + share * apart, Math.Sqrt(share) * a);
    }
}
