namespace ScaleLink.Weighing.Pads;

/// <summary>Covariance of span (kg per count) and curvature (kg per count squared).</summary>
readonly record struct CurveCovariance(double SpanSpan, double SpanCurvature, double CurvatureCurvature)
{
    /// <summary>Standard uncertainty that it gives a load of <paramref name="counts"/> above zero, kg.</summary>
    public double AtCounts(double counts)
    {
        var square = counts * counts;
        return Math.Sqrt(Math.Max(0, square * (SpanSpan + 2 * counts * SpanCurvature + square * CurvatureCurvature)));
    }
}
