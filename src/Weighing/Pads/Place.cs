using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Pads;

/// <summary>Where a pad is calibrated or used, for its gravity. Two places of one name are the same place.</summary>
/// <param name="Name">For people and for comparison.</param>
/// <param name="GravityMps2">Local gravity, m/s².</param>
/// <param name="RelativeUncertainty">Its relative standard uncertainty.</param>
sealed record Place(string Name, double GravityMps2, double RelativeUncertainty)
{
    /// <summary>Gravity from latitude and height.</summary>
    public static Place On(string name, double latitudeDeg, double heightM) =>
        new(name, Gravity.At(latitudeDeg, heightM), TypeB.Rectangular(Gravity.RelativeLimit));

    /// <summary>
    /// The factor on a load calibrated here and read at <paramref name="use"/>, with its relative standard uncertainty. A
    /// strain-gauge pad feels force, so where gravity is weaker it reads less.
    /// </summary>
    public (double Factor, double RelativeUncertainty) CarriedTo(Place use)
    {
        ArgumentNullException.ThrowIfNull(use);
        return use.Name == Name
            ? (1, 0)
            : (GravityMps2 / use.GravityMps2, double.Hypot(RelativeUncertainty, use.RelativeUncertainty));
    }
}
