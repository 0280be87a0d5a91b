using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.Balance;

/// <summary>Mass that comes or goes against the car as weighed, kg; negative when it is missing.</summary>
public sealed record MassChange(string Name, double Kg, Place Place);

/// <summary>A state of the car that was not weighed: the other driver, the tank at the finish.</summary>
/// <param name="Name">As the crew calls it.</param>
/// <param name="Changes">Against the car as weighed.</param>
public sealed record LoadCase(string Name, params IReadOnlyList<MassChange> Changes)
{
    /// <summary>Loads in this state, perches as they are.</summary>
    /// <param name="statics">The car.</param>
    /// <param name="weighed">As weighed.</param>
    public LoadSummary Loads(CarStatics statics, LoadSummary weighed) =>
        new(Changes.Aggregate(weighed.Loads, (loads, change) => loads + statics.FromMass(change.Kg, change.Place)), weighed.Covariance, weighed.DegreesOfFreedom);
}
