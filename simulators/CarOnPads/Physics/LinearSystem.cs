namespace CarOnPads.Physics;

/// <summary>Gaussian elimination with partial pivoting for the small dense systems of the statics.</summary>
static class LinearSystem
{
    /// <summary>Solves A x = b. Both are overwritten; b holds x on return.</summary>
    public static void Solve(double[,] a, double[] b)
    {
        var n = b.Length;
        for (var column = 0; column < n; column++)
        {
            BringUpPivot(a, b, column);
            for (var row = column + 1; row < n; row++)
            {
                var factor = a[row, column] / a[column, column];
                if (factor == 0)
                    continue;
                for (var k = column; k < n; k++)
                    a[row, k] -= factor * a[column, k];
                b[row] -= factor * b[column];
            }
        }

        for (var row = n - 1; row >= 0; row--)
        {
            for (var k = row + 1; k < n; k++)
                b[row] -= a[row, k] * b[k];
            b[row] /= a[row, row];
        }
    }

    static void BringUpPivot(double[,] a, double[] b, int column)
    {
        var best = column;
        for (var row = column + 1; row < b.Length; row++)
            if (Math.Abs(a[row, column]) > Math.Abs(a[best, column]))
                best = row;
        if (best == column)
            return;
        for (var k = column; k < b.Length; k++)
            (a[column, k], a[best, k]) = (a[best, k], a[column, k]);
        (b[column], b[best]) = (b[best], b[column]);
    }
}
