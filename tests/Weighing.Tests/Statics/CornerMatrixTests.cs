using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using ScaleLink.Measure;
using ScaleLink.Weighing.Statics;

namespace Weighing.Tests.Statics;

/// <summary>Small matrix arithmetic against MathNet.Numerics.</summary>
public class CornerMatrixTests
{
    static readonly Gen<Corners> GenRow = Gen.Select(Gen.Double[-9, 9], Gen.Double[-9, 9], Gen.Double[-9, 9], Gen.Double[-9, 9], (a, b, c, d) => new Corners(a, b, c, d));
    static readonly Gen<CornerMatrix> GenMatrix = Gen.Select(GenRow, GenRow, GenRow, GenRow, (a, b, c, d) => new CornerMatrix(a, b, c, d));

    [Fact]
    public void Products_transposes_and_inverses_agree_with_a_library() =>
        Gen.Select(GenMatrix, GenMatrix, GenRow).Sample((a, b, v) =>
        {
            Matrix<double> libraryA = Library(a), libraryB = Library(b);
            Assert.True((Library(a * b) - libraryA * libraryB).FrobeniusNorm() < 1e-10);
            Assert.True((Library(a.Transposed) - libraryA.Transpose()).FrobeniusNorm() == 0);
            Assert.True((Vector(a * v) - libraryA * Vector(v)).L2Norm() < 1e-10);
            if (libraryA.ConditionNumber() < 1e4)
                Assert.True((Library(a.Inverse()) - libraryA.Inverse()).FrobeniusNorm() < 1e-8 * libraryA.Inverse().FrobeniusNorm());
        }, iter: 500);

    [Fact]
    public void A_matrix_without_inverse_says_so() =>
        Assert.Throws<ArithmeticException>(() => default(CornerMatrix).Inverse());

    [Fact]
    public void Columns_rows_and_diagonal_are_where_they_belong()
    {
        var m = CornerMatrix.FromColumns(c => new((int)c, 10 + (int)c, 20 + (int)c, 30 + (int)c));

        Assert.Equal(new Corners(2, 12, 22, 32), m.Column(Corner.LR));
        Assert.Equal(new Corners(10, 11, 12, 13), m[Corner.RF]);
        Assert.Equal(new Corners(0, 11, 22, 33), m.DiagonalPart);
    }

    static Matrix<double> Library(CornerMatrix m) => Matrix<double>.Build.Dense(4, 4, (i, j) => m[(Corner)i][(Corner)j]);

    static Vector<double> Vector(Corners v) => Vector<double>.Build.Dense(4, i => v[(Corner)i]);
}
