namespace ScaleLink.Weighing.Cars;

/// <summary>An anti-roll bar.</summary>
/// <param name="RateNPerMm">
/// At the wheels: force on each wheel for one mm of difference between the travel of the left and of the right wheel, N/mm.
/// </param>
/// <param name="Connected">False when a drop link is off, as it should be while perches are turned.</param>
sealed record AntiRollBar(Stated RateNPerMm, bool Connected);
