using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Calibration.Fitting;

/// <summary>From the coefficients of the scaled fit to zero, span and curvature in counts, with the covariance.</summary>
sealed class CurveTransform
{
    readonly ProcedureDesign _design;
    readonly LinearFit _fit;
    readonly double[,] _pseudoInverse;
    readonly int _order;
    readonly double[,] _jacobian;

    public CurveTransform(ProcedureDesign design, LinearFit fit, double[,] matrix, int order)
    {
        (_design, _fit, _order) = (design, fit, order);
        _pseudoInverse = HouseholderQr.Of(matrix).PseudoInverse();

        int last = design.Repetitions.Count - 1, linear = design.Repetitions.Count;
        double zero = fit.Coefficients[last], slope = fit.Coefficients[linear];
        var bow = order > 1 ? fit.Coefficients[linear + 1] : 0;
        var root = -2 * zero / (slope + Math.Sqrt(Math.Max(0, slope * slope - 4 * bow * zero)));
        var slopeThere = slope + 2 * bow * root;

        ZeroCounts = design.Origin + design.Scale * root;
        Span = slopeThere / design.Scale;
        Curvature = bow / (design.Scale * design.Scale);

        // Rows: zero, span, curvature in counts. The root moves by -dz/s', -x dz/s', -x² dz/s' with each coefficient.
        _jacobian = new double[3, fit.Coefficients.Count];
        (int Column, double RootPer)[] moves = [(last, -1 / slopeThere), (linear, -root / slopeThere), (linear + 1, -root * root / slopeThere)];
        foreach (var (column, rootPer) in moves[..(order + 1)])
        {
            _jacobian[0, column] = design.Scale * rootPer;
            _jacobian[1, column] = 2 * bow * rootPer / design.Scale;
        }
        _jacobian[1, linear] += 1 / design.Scale;
        if (order > 1)
        {
            _jacobian[1, linear + 1] += 2 * root / design.Scale;
            _jacobian[2, linear + 1] = 1 / (design.Scale * design.Scale);
        }
    }

    public double ZeroCounts { get; }

    public double ZeroUncertaintyCounts => Math.Sqrt(Matrices.Propagate(_jacobian, _fit.Covariance)[0, 0]);

    public double Span { get; }

    public double Curvature { get; }

    /// <summary>Covariance by the repeatability of the points.</summary>
    public CurveCovariance Noise() => Of(Matrices.Propagate(_jacobian, _fit.Covariance));

    /// <summary>Covariance by independent causes, each given as the shift it makes in every observation.</summary>
    public CurveCovariance Carry(IEnumerable<double[]> causes)
    {
        var sum = new CurveCovariance();
        foreach (var cause in causes)
        {
            var moved = Matrices.Times(_jacobian, Matrices.Times(_pseudoInverse, cause));
            sum = new CurveCovariance(
                sum.SpanSpan + moved[1] * moved[1], sum.SpanCurvature + moved[1] * moved[2], sum.CurvatureCurvature + moved[2] * moved[2]);
        }
        return sum;
    }

    /// <summary>The ballast with the larger of its uncertainties: repeatability, and masses that err together or apart.</summary>
    public IReadOnlyList<BallastMass> Ballast()
    {
        var first = _design.Repetitions.Count + _order;
        return [.. _design.Ballast.Select((label, k) => new BallastMass(label, _fit.Coefficients[first + k], BallastUncertainty(first + k)))];
    }

    double BallastUncertainty(int coefficient)
    {
        double By(IEnumerable<double[]> causes) => causes.Sum(cause => Math.Pow(Matrices.Times(_pseudoInverse, cause)[coefficient], 2));
        var masses = Math.Max(By(_design.LotErrors), By(_design.SingleErrors));
        return Math.Sqrt(_fit.Covariance[coefficient, coefficient] + masses);
    }

    static CurveCovariance Of(double[,] covariance) => new(covariance[1, 1], covariance[1, 2], covariance[2, 2]);
}
