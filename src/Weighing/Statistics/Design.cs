namespace ScaleLink.Weighing.Statistics;

/// <summary>Design matrices of the calibration models: observations by coefficients, lowest power first.</summary>
static class Design
{
    /// <summary>y = b₁ x.</summary>
    public static double[,] ThroughZero(IReadOnlyList<double> x) => Powers(x, 1, 1);

    /// <summary>y = b₀ + b₁ x.</summary>
    public static double[,] Line(IReadOnlyList<double> x) => Powers(x, 0, 1);

    /// <summary>y = b₀ + b₁ x + b₂ x².</summary>
    public static double[,] Quadratic(IReadOnlyList<double> x) => Powers(x, 0, 2);

    /// <summary>One column for each entry of <paramref name="columns"/>, asked for every observation.</summary>
    public static double[,] Of(int observations, params ReadOnlySpan<Func<int, double>> columns)
    {
        var design = new double[observations, columns.Length];
        for (var j = 0; j < columns.Length; j++)
            for (var i = 0; i < observations; i++)
                design[i, j] = columns[j](i);
        return design;
    }

    static double[,] Powers(IReadOnlyList<double> x, int lowest, int highest)
    {
        ArgumentNullException.ThrowIfNull(x);
        var design = new double[x.Count, highest - lowest + 1];
        for (var i = 0; i < x.Count; i++)
            for (var power = lowest; power <= highest; power++)
                design[i, power - lowest] = power switch { 0 => 1, 1 => x[i], _ => x[i] * x[i] };
        return design;
    }
}
