namespace ScaleLink.Weighing.Calibration.Masses;

/// <summary>
/// Maximum permissible errors of weights, 100 g to 50 kg. Source: OIML R 111-1:2004, Table 1.
/// </summary>
static class WeightTolerances
{
    // Milligrams, in the order E2, F1, F2, M1, M2, M3.
    static readonly Dictionary<double, double[]> Table = new()
    {
        [0.1] = [0.16, 0.5, 1.6, 5, 16, 50],
        [0.2] = [0.3, 1.0, 3.0, 10, 30, 100],
        [0.5] = [0.8, 2.5, 8.0, 25, 80, 250],
        [1] = [1.6, 5, 16, 50, 160, 500],
        [2] = [3.0, 10, 30, 100, 300, 1000],
        [5] = [8.0, 25, 80, 250, 800, 2500],
        [10] = [16, 50, 160, 500, 1600, 5000],
        [20] = [30, 100, 300, 1000, 3000, 10000],
        [50] = [80, 250, 800, 2500, 8000, 25000],
    };

    /// <summary>Nominal values that the table knows, kg, ascending.</summary>
    public static IReadOnlyList<double> NominalKg { get; } = [.. Table.Keys.Order()];

    /// <summary>Permissible error either way, kg; null where the table has no such weight.</summary>
    public static double? ToleranceKg(double nominalKg, WeightClass weightClass) =>
        Table.TryGetValue(nominalKg, out var row) ? row[(int)weightClass] * 1e-6 : null;
}
