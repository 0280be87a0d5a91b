using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.Planning;

/// <summary>Changes that somebody wonders about: any of turns, pads and mass, all at once.</summary>
public sealed record WhatIf
{
    /// <summary>Turns of the perches, up positive.</summary>
    public Corners Turns { get; init; }

    /// <summary>Pads raised by so much, mm.</summary>
    public Corners PadsRaisedMm { get; init; }

    /// <summary>Mass that comes or goes.</summary>
    public IReadOnlyList<MassChange> Masses { get; init; } = [];

    /// <summary>
    /// The loads that would be read then, with what the doubt about reading and car leaves, and the change of ride heights by
    /// the turns alone.
    /// </summary>
    /// <param name="statics">The car.</param>
    /// <param name="now">Loads as they are.</param>
    public (LoadSummary Loads, Corners HeightChangesMm) Ask(CarStatics statics, LoadSummary now)
    {
        var spread = now.Covariance;
        foreach (var doubt in ModelDoubt.Of(statics.Car))
        {
            var half = doubt.PerStep / 2 * (Change(statics.WithDoubt(doubt.Upper)) - Change(statics.WithDoubt(doubt.Lower)));
            spread += CornerMatrix.Outer(half, half);
        }
        return (new(now.Loads + Change(statics), spread, now.DegreesOfFreedom), statics.HeightsFromTurns(Turns));
    }

    Corners Change(CarStatics statics) => Masses.Aggregate(statics.FromTurns(Turns) + statics.FromPads(PadsRaisedMm),
        (change, mass) => change + statics.FromMass(mass.Kg, mass.Place));
}
