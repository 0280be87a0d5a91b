namespace ScaleLink.Measure.Distributions;

/// <summary>The normal distribution, as far as coverage needs it.</summary>
internal static class NormalDistribution
{
    // Farther out nothing is left that a double could tell from 1.
    private const double Farthest = 8.3;

    /// <summary>x so that the share <paramref name="probability"/> lies between -x and x.</summary>
    public static double TwoSided(double probability) => Bisection.Rising(x => Within(x) - probability, 0, Farthest);

    // The series that only adds: Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.2.11.
    private static double Within(double x)
    {
        double term = x, sum = x;
        for (var odd = 3; term > sum * 1e-17; odd += 2)
            sum += term *= x * x / odd;
        return sum * Math.Sqrt(2 / Math.PI) * Math.Exp(-x * x / 2);
    }
}
