namespace ScaleLink.Measure.Distributions;

/// <summary>Student's t for a whole number of degrees of freedom. Source: Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.7.</summary>
internal static class StudentDistribution
{
    // From here on the expansion about the normal distribution is good to ten digits, and the sum gets long.
    public const int Long = 400;

    /// <summary>t so that the share <paramref name="probability"/> lies between -t and t.</summary>
    public static double TwoSided(double degreesOfFreedom, double probability)
    {
        if (degreesOfFreedom > Long)
            return Expanded(NormalDistribution.TwoSided(probability), degreesOfFreedom);
        var freedom = (int)degreesOfFreedom;
        return Math.Sqrt(freedom) * Math.Tan(Bisection.Rising(angle => Within(angle, freedom) - probability, 0, Math.PI / 2));
    }

    // 26.7.3 and 26.7.4, with tan(angle) = t / sqrt(degrees of freedom): finite sums, exact.
    private static double Within(double angle, int freedom)
    {
        var (sin, cos) = Math.SinCos(angle);
        var isOdd = freedom % 2 == 1;
        double term = isOdd ? cos : 1, sum = freedom == 1 ? 0 : term;
        for (var power = isOdd ? 3 : 2; power <= freedom - 2; power += 2)
            sum += term *= cos * cos * (power - 1) / power;
        return isOdd ? 2 / Math.PI * (angle + sin * sum) : sin * sum;
    }

    // 26.7.5.
    private static double Expanded(double x, double freedom)
    {
        var square = x * x;
        var first = x * (square + 1) / 4;
        var second = x * ((5 * square + 16) * square + 3) / 96;
        var third = x * (((3 * square + 19) * square + 17) * square - 15) / 384;
        return x + (first + (second + third / freedom) / freedom) / freedom;
    }
}
