namespace ScaleLink.Weighing.Cars;

/// <summary>The tank, and how full it is when the car is weighed, starts and finishes.</summary>
/// <param name="Place">Middle of the fuel, taken as the same however full the tank is.</param>
/// <param name="KgPerLitre">Density of the fuel, kg per litre.</param>
/// <param name="WeighedLitres">In the tank while the car stands on the pads.</param>
/// <param name="StartLitres">In the tank at the start.</param>
/// <param name="FinishLitres">Left at the finish.</param>
sealed record FuelTank(Place Place, Stated KgPerLitre, Stated WeighedLitres, Stated StartLitres, Stated FinishLitres)
{
    /// <summary>
    /// Petrol, when nobody states it: 0.720 to 0.775 kg per litre at 15 °C, taken as evenly likely (range of EN 228, from memory).
    /// </summary>
    public static Stated Petrol { get; } = new(0.7475, 0.016);
}

/// <summary>How full the tank is.</summary>
enum FuelLevel
{
    /// <summary>As on the pads.</summary>
    AsWeighed,
    /// <summary>As at the start.</summary>
    Start,
    /// <summary>As at the finish.</summary>
    Finish,
    /// <summary>Dry.</summary>
    Empty,
}
