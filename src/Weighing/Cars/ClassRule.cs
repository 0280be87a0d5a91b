namespace ScaleLink.Weighing.Cars;

/// <summary>The least mass that the class allows, and what counts.</summary>
/// <param name="MinimumKg">By the rules of the class, kg.</param>
/// <param name="MarginKg">What the crew wants in hand above it, kg: scales differ, parts fall off.</param>
/// <param name="WithDriver">Whether a driver counts.</param>
/// <param name="Fuel">Which fuel counts.</param>
sealed record ClassRule(double MinimumKg, double MarginKg, bool WithDriver, FuelLevel Fuel);
