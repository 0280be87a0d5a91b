using ScaleLink.Weighing.Cars;

namespace ScaleLink.Daemon.Workflows.Cars;

/// <summary>One revision of a car in the ledger.</summary>
/// <param name="Model">As the file says.</param>
/// <param name="File">The car file, as it was saved.</param>
/// <param name="Hash">SHA-256 of the file, lower-case hexadecimal.</param>
/// <param name="SavedAt">UTC.</param>
/// <param name="Who">Who saved it.</param>
/// <param name="Entry">Its entry in the ledger.</param>
internal sealed record SavedCar(CarModel Model, string File, string Hash, DateTimeOffset SavedAt, string Who, long Entry);
