namespace ScaleLink.Weighing.Pads;

/// <summary>
/// How the errors of the pads of one bay go together: pads of one make, under one car that comes onto all four in the same way. What they share
/// adds up in a total and mostly drops out of differences and shares. Source of the method: JCGM 100:2008 (GUM) 5.2.2, F.1.2.1 (what two inputs
/// have in common correlates them) and F.1.2.3 (the covariance is that of the common causes). How much is shared is a decision: no published source.
/// </summary>
static class ErrorSharing
{
    /// <summary>
    /// The part of a term's variance that errs alike on all pads. Wheels that are lowered and bounced together stand on the same branch of
    /// each pad's loop; the place is the same for all. Creep and temperature of cells come out either way within one lot.
    /// </summary>
    public static double AlikeShare(string term) => term switch
    {
        BudgetTerms.Gravity => 1,
        BudgetTerms.Hysteresis => 0.9,
        _ => 0,
    };

    /// <summary>
    /// True where nobody knows whether it errs alike: the known masses, for other pads may have been calibrated with the same ones, and the
    /// stated span of pads that were never calibrated, for one wrong constant may stand behind all of them.
    /// </summary>
    public static bool MayErrAlike(string term) => term is BudgetTerms.Masses or BudgetTerms.Buoyancy or BudgetTerms.StatedSpan;

    /// <summary>True for what is another error after the next settle, and so does not drop out of a change.</summary>
    public static bool DiffersByPlacing(string term) => term is BudgetTerms.Position or BudgetTerms.Repeatability or BudgetTerms.Hysteresis;
}
