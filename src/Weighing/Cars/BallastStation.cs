namespace ScaleLink.Weighing.Cars;

/// <summary>A place where ballast can be fixed.</summary>
/// <param name="Name">As the crew calls it.</param>
/// <param name="Place">Where it is.</param>
/// <param name="FittedKg">Mass in it now.</param>
/// <param name="CapacityKg">Most mass that its fixings are good for.</param>
sealed record BallastStation(string Name, Place Place, double FittedKg, double CapacityKg);
