using MathNet.Numerics.LinearAlgebra;

namespace ScaleLink.Weighing.Settling;

/// <summary>A symmetric 4x4 matrix over the corners, kg²: how the errors of the four loads go together.</summary>
readonly record struct LoadMatrix(Corners LF, Corners RF, Corners LR, Corners RR)
{
    /// <summary>The diagonal, each at least zero.</summary>
    public Corners Diagonal => new(Math.Max(0, LF.LF), Math.Max(0, RF.RF), Math.Max(0, LR.LR), Math.Max(0, RR.RR));

    /// <summary>Variance of the combination <paramref name="weights"/> of the four loads, at least zero.</summary>
    public double VarianceOf(in Corners weights) => Math.Max(0, weights.Dot(
        new(LF.Dot(weights), RF.Dot(weights), LR.Dot(weights), RR.Dot(weights))));

    /// <summary>Independent errors with these variances.</summary>
    public static LoadMatrix OfDiagonal(in Corners v) => new(new(v.LF, 0, 0, 0), new(0, v.RF, 0, 0), new(0, 0, v.LR, 0), new(0, 0, 0, v.RR));

    /// <summary>From the statics' matrix.</summary>
    public static LoadMatrix From(in Statics.CornerMatrix m) => new(m.LF, m.RF, m.LR, m.RR);

    /// <summary>From a 4x4 matrix.</summary>
    public static LoadMatrix From(Matrix<double> m) => new(
        new(m[0, 0], m[0, 1], m[0, 2], m[0, 3]), new(m[1, 0], m[1, 1], m[1, 2], m[1, 3]),
        new(m[2, 0], m[2, 1], m[2, 2], m[2, 3]), new(m[3, 0], m[3, 1], m[3, 2], m[3, 3]));

    /// <summary>The sum of the outer products of <paramref name="deviations"/> (four by count, pad by pad), divided by count.</summary>
    public static LoadMatrix SecondMoments(ReadOnlySpan<double> deviations, int count)
    {
        var a = deviations[..count];
        var b = deviations.Slice(count, count);
        var c = deviations.Slice(2 * count, count);
        var d = deviations.Slice(3 * count, count);
        double aa = 0, ab = 0, ac = 0, ad = 0, bb = 0, bc = 0, bd = 0, cc = 0, cd = 0, dd = 0;
        for (var i = 0; i < count; i++)
        {
            double p = a[i], q = b[i], r = c[i], s = d[i];
            aa += p * p; ab += p * q; ac += p * r; ad += p * s;
            bb += q * q; bc += q * r; bd += q * s;
            cc += r * r; cd += r * s;
            dd += s * s;
        }
        var per = 1.0 / count;
        return new(per * new Corners(aa, ab, ac, ad), per * new Corners(ab, bb, bc, bd),
            per * new Corners(ac, bc, cc, cd), per * new Corners(ad, bd, cd, dd));
    }
}
