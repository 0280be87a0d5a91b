namespace ScaleLink.Weighing.Cars;

/// <summary>Somebody who races the car.</summary>
/// <param name="Name">As the crew calls them.</param>
/// <param name="MassKg">With suit, helmet and what else goes along, kg.</param>
/// <param name="Seat">Middle of their mass, seated.</param>
/// <param name="IsInCar">True for the one who sits in the car, or whose ballast does, while it is weighed.</param>
sealed record Driver(string Name, Stated MassKg, Place Seat, bool IsInCar);
