using CsCheck;
using Shared;
using MathNet.Numerics.LinearAlgebra;
using ScaleLink.Weighing.Statistics;

namespace Weighing.Tests.Statistics;

/// <summary>MathNet.Numerics, by its own decompositions, against the fits here on random designs.</summary>
public class LeastSquaresPropertyTests
{
    static readonly Gen<(double[,] Design, double[] Y, double[] U)> Problems =
        from n in Gen.Int[6, 40]
        from p in Gen.Int[1, 5]
        from entries in Gen.Double[-3, 3].Array[n * p]
        from exponents in Gen.Int[-6, 6].Array[p]
        from y in Gen.Double[-10, 10].Array[n]
        from u in Gen.Double[0.1, 2].Array[n]
        select (Shape(entries, exponents, n, p), y, u);

    [Fact]
    public void Plain_fits_agree() => Seeded.Check(Problems, 100, problem =>
    {
        var x = Matrix<double>.Build.DenseOfArray(problem.Design);
        var y = Vector<double>.Build.Dense(problem.Y);
        if (Badly(x))
            return;
        var fit = LeastSquares.Fit(problem.Design, problem.Y);
        var coefficients = x.Svd().Solve(y);
        var residual = (y - x * coefficients).L2Norm();
        Agree(coefficients, (x.Transpose() * x).Inverse() * (residual * residual / (x.RowCount - x.ColumnCount)), fit);
    });

    [Fact]
    public void Weighted_and_correlated_fits_agree() => Seeded.Check(Problems, 100, problem =>
    {
        var x = Matrix<double>.Build.DenseOfArray(problem.Design);
        if (Badly(x))
            return;
        var n = problem.Y.Length;
        var y = Vector<double>.Build.Dense(problem.Y);
        var covariance = Matrix<double>.Build.Dense(n, n,
            (i, j) => problem.U[i] * problem.U[j] * Math.Pow(0.4, Math.Abs(i - j)));
        var weight = covariance.Inverse();
        var inverse = (x.Transpose() * weight * x).Inverse();
        Agree(inverse * x.Transpose() * weight * y, inverse,
            LeastSquares.Generalised(problem.Design, problem.Y, covariance.ToArray()));

        var diagonal = Matrix<double>.Build.DenseOfDiagonalArray([.. problem.U.Select(u => 1 / (u * u))]);
        var plain = (x.Transpose() * diagonal * x).Inverse();
        Agree(plain * x.Transpose() * diagonal * y, plain, LeastSquares.Weighted(problem.Design, problem.Y, problem.U));
    });

    [Fact]
    public void Dependent_columns_are_refused()
    {
        var qr = HouseholderQr.Of(Design.Of(4, i => i, i => 2 * i));
        Assert.False(qr.FullRank);
        Assert.Throws<InvalidOperationException>(() => qr.Solve([1, 2, 3, 4]));
    }

    [Fact]
    public void Too_few_observations_are_refused() =>
        Assert.Throws<ArgumentException>(() => LeastSquares.Fit(Design.Quadratic([1, 2]), [1, 2]));

    // MathNet's inverses here go through normal equations; designs that cost it half its digits calibrate nothing.
    static bool Badly(Matrix<double> x) => x.NormalizeColumns(2).ConditionNumber() > 1e3;

    static double[,] Shape(double[] entries, int[] exponents, int n, int p)
    {
        var design = new double[n, p];
        for (var i = 0; i < n; i++)
            for (var j = 0; j < p; j++)
                design[i, j] = entries[i * p + j] * Math.Pow(10, exponents[j] / 3.0);
        return design;
    }

    static void Agree(Vector<double> coefficients, Matrix<double> covariance, LinearFit fit)
    {
        for (var i = 0; i < coefficients.Count; i++)
        {
            var u = Math.Sqrt(covariance[i, i]);
            Assert.Equal(0, (coefficients[i] - fit.Coefficients[i]) / u, 1e-7);
            Assert.Equal(1, fit.StandardDeviation(i) / u, 1e-7);
        }
    }
}
