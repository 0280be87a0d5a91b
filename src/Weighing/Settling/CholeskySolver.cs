namespace ScaleLink.Weighing.Settling;

/// <summary>Solves one positive definite system in place, without allocating; at these sizes faster than a general library.</summary>
sealed class CholeskySolver(int size)
{
    /// <summary>The matrix by rows; only the lower triangle is read, and it is overwritten.</summary>
    public double[] Matrix { get; } = new double[size * size];

    /// <summary>Solves for a right-hand side of ones.</summary>
    public void SolveOnes(Span<double> solution)
    {
        Factor();
        solution[..size].Fill(1);
        for (var i = 0; i < size; i++)
        {
            var row = Matrix.AsSpan(i * size, size);
            var sum = solution[i];
            for (var k = 0; k < i; k++) sum -= row[k] * solution[k];
            solution[i] = sum / row[i];
        }
        for (var i = size - 1; i >= 0; i--)
        {
            var sum = solution[i];
            for (var k = i + 1; k < size; k++) sum -= Matrix[k * size + i] * solution[k];
            solution[i] = sum / Matrix[i * size + i];
        }
    }

    void Factor()
    {
        for (var i = 0; i < size; i++)
        {
            var row = Matrix.AsSpan(i * size, size);
            for (var j = 0; j <= i; j++)
            {
                var other = Matrix.AsSpan(j * size, size);
                var sum = row[j];
                for (var k = 0; k < j; k++) sum -= row[k] * other[k];
                row[j] = i == j ? Math.Sqrt(sum) : sum / other[j];
            }
        }
    }
}
