namespace CarOnPads.Physics;

/// <summary>Inverse of a symmetric 3x3 matrix, by cofactors.</summary>
readonly struct SymmetricInverse
{
    readonly double _a, _b, _c, _d, _e, _f;

    SymmetricInverse(double a, double b, double c, double d, double e, double f) =>
        (_a, _b, _c, _d, _e, _f) = (a, b, c, d, e, f);

    public static SymmetricInverse Of(double[,] m)
    {
        double a = m[0, 0], b = m[0, 1], c = m[0, 2], d = m[1, 1], e = m[1, 2], f = m[2, 2];
        var ca = d * f - e * e;
        var cb = c * e - b * f;
        var cc = b * e - c * d;
        var det = a * ca + b * cb + c * cc;
        return new SymmetricInverse(
            ca / det, cb / det, cc / det, (a * f - c * c) / det, (b * c - a * e) / det, (a * d - b * b) / det);
    }

    public (double X, double Y, double Z) Times(double x, double y, double z) =>
        (_a * x + _b * y + _c * z, _b * x + _d * y + _e * z, _c * x + _e * y + _f * z);
}
