using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.Balance;

/// <summary>Mass that comes or goes against the car as weighed, kg; negative when it is missing.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Kg">kg.</param>
/// <param name="Place">Where.</param>
/// <param name="StandardUncertaintyKg">One standard uncertainty of the mass, kg.</param>
sealed record MassChange(string Name, double Kg, Place Place, double StandardUncertaintyKg = 0);

/// <summary>A state of the car that was not weighed: the other driver, the tank at the finish.</summary>
/// <param name="Name">As the crew calls it.</param>
/// <param name="Changes">Against the car as weighed.</param>
sealed record LoadCase(string Name, params IReadOnlyList<MassChange> Changes)
{
    /// <summary>
    /// Loads in this state, perches as they are. To the uncertainty of the reading come those of the masses and of the car's rates,
    /// which say how a mass spreads over the diagonals.
    /// </summary>
    /// <param name="statics">The car.</param>
    /// <param name="weighed">As weighed.</param>
    /// <exception cref="DiagnosticException">A wheel would carry nothing.</exception>
    public LoadSummary Loads(CarStatics statics, LoadSummary weighed)
    {
        var spread = weighed.Covariance + ModelUncertainty.SpreadOf(statics, Change);
        foreach (var mass in Changes)
        {
            var uncertainty = statics.FromMass(mass.StandardUncertaintyKg, mass.Place);
            spread += CornerMatrix.Outer(uncertainty, uncertainty);
        }

        return new(weighed.Loads + Change(statics), spread, weighed.DegreesOfFreedom);
    }

    Corners Change(CarStatics statics) => Changes.Aggregate(default(Corners), (sum, mass) => sum + statics.FromMass(mass.Kg, mass.Place));
}
