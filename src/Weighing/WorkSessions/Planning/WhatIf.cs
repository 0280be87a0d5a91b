using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.WorkSessions.Planning;

/// <summary>Changes that somebody wonders about: any of turns, pads and mass, all at once.</summary>
sealed record WhatIf
{
    // Further than any thread goes, than any pad is shimmed, than any car weighs.
    const double MostTurns = 30, MostMm = 200, MostKg = 10_000, FurthestMm = 20_000;

    /// <summary>Turns of the perches, up positive.</summary>
    public Corners Turns { get; init; }

    /// <summary>Pads raised by so much, mm.</summary>
    public Corners PadsRaisedMm { get; init; }

    /// <summary>Mass that comes or goes.</summary>
    public IReadOnlyList<MassChange> Masses { get; init; } = [];

    /// <summary>
    /// The loads that would be read then, with what the uncertainty about reading and car leaves, and the change of ride heights by
    /// the turns alone.
    /// </summary>
    /// <param name="statics">The car.</param>
    /// <param name="now">Loads as they are.</param>
    /// <exception cref="DiagnosticException">A number in the question is not usable, or a wheel would carry nothing.</exception>
    public (LoadSummary Loads, Corners HeightChangesMm) Ask(CarStatics statics, LoadSummary now)
    {
        if (Mistakes(statics.Car).ToList() is { Count: > 0 } mistakes)
            throw new DiagnosticException(mistakes);
        return (new(now.Loads + Change(statics), now.Covariance + ModelUncertainty.SpreadOf(statics, Change), now.DegreesOfFreedom), statics.HeightsFromTurns(Turns));
    }

    IEnumerable<Diagnostic> Mistakes(CarModel car)
    {
        foreach (var corner in Corners.All.ToArray())
        {
            if (!(Math.Abs(Turns[corner]) <= MostTurns) || (Turns[corner] != 0 && !car.Suspension[corner].Perch.CanTurn))
                yield return new(SessionCodes.StepUnusable, $"{corner} cannot be turned by {Turns[corner]}.", $"Give turns as numbers up to {MostTurns}, and none for a fixed perch.") { Where = "turns" };
            if (!(Math.Abs(PadsRaisedMm[corner]) < MostMm))
                yield return new(PatchCodes.InputUnusable, $"The {corner} pad is raised by {Mm(PadsRaisedMm[corner])}.", $"Give heights within {Mm(MostMm)}.") { Where = "pads raised" };
        }
        foreach (var mass in Masses)
            if (!(Math.Abs(mass.Kg) < MostKg && Math.Abs(mass.Place.X) + Math.Abs(mass.Place.Y) < FurthestMm))
                yield return new(PlanCodes.InputUnusable, $"The mass {mass.Name} is {Kg(mass.Kg)} at {Mm(mass.Place.BehindFrontAxleMm)} behind the front axle, {Mm(mass.Place.LeftOfCentreMm)} left.",
                    "Give its mass in kg and its place in the car in mm.") { Where = "masses" };
    }

    Corners Change(CarStatics statics) => Masses.Aggregate(statics.FromTurns(Turns) + statics.FromPads(PadsRaisedMm),
        (change, mass) => change + statics.FromMass(mass.Kg, mass.Place));
}
