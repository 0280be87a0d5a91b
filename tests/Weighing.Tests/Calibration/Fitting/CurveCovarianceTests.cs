using ScaleLink.Weighing.Calibration;
using ScaleLink.Weighing.Calibration.Fitting;
using ScaleLink.Weighing.Calibration.Masses;
using Weighing.Tests.Calibration.Coverage;
using Weighing.Tests.Calibration.Procedure;

namespace Weighing.Tests.Calibration.Fitting;

/// <summary>
/// The stated covariance against fits made anew with one input moved at a time (GUM 5.1.4), on a bent pad whose
/// zero wanders far, so that every part of the propagation counts.
/// </summary>
public class CurveCovarianceTests
{
    static readonly double[] Loads = [20, 60, 120, 200];

    static readonly MassSet Masses = new([.. Bench.Masses.Masses.Select((m, i) => m with { StandardUncertaintyKg = 0.01 * (i + 1) })]);

    static List<ProcedurePoint> Points()
    {
        var pad = new SimulatedPad(new Random(6)) { BowKg = 3, NoiseKg = 0.02 };
        return [.. pad.Calibrate(Bench.Stacks, Bench.TrueKg).Select(p => p with { Counts = p.Counts + 400 * 25 * (p.Repetition - 1) })];
    }

    [Fact]
    public void Masses_that_err_by_themselves()
    {
        var fit = CurveFitter.Fit(Masses, Points());
        Assert.Equal(2, fit.Order);
        foreach (var kg in Loads)
        {
            var x = Counts(fit, kg);
            var moved = Masses.Masses.Sum(mass => Math.Pow(Kg(With(mass.Label), x) - Kg(fit, x), 2));
            Assert.Equal(1, fit.MassesApart.AtCounts(x) / Math.Sqrt(moved), 1e-3);
        }
    }

    [Fact]
    public void Masses_that_err_together()
    {
        var fit = CurveFitter.Fit(Masses, Points());
        foreach (var kg in Loads)
        {
            var x = Counts(fit, kg);
            var moved = Kg(With([.. Masses.Masses.Select(m => m.Label)]), x) - Kg(fit, x);
            Assert.Equal(1, fit.MassesTogether.AtCounts(x) / Math.Abs(moved), 1e-3);
        }
    }

    [Fact]
    public void Repeatability_of_the_readings()
    {
        var points = Points();
        var fit = CurveFitter.Fit(Masses, points);
        foreach (var kg in Loads)
        {
            var x = Counts(fit, kg);
            var moved = points.Index().Sum(point =>
            {
                // A reading moved by as many counts as make one residual standard deviation in kg where it stands.
                var above = point.Item.Counts - fit.ZeroCounts - 400 * 25 * (point.Item.Repetition - 3);
                var step = fit.Choice.Fit.ResidualSd / (fit.SpanKgPerCount + 2 * fit.CurvatureKgPerCount2 * above);
                List<ProcedurePoint> others = [.. points];
                others[point.Index] = point.Item with { Counts = point.Item.Counts + step };
                return Math.Pow(Kg(CurveFitter.Fit(Masses, others), x) - Kg(fit, x), 2);
            });
            // Moving a reading also moves the matrix that it stands in: equal to first order only.
            Assert.Equal(1, fit.Repeatability.AtCounts(x) / Math.Sqrt(moved), 0.02);
        }
    }

    [Fact]
    public void The_zero_is_that_of_the_last_repetition()
    {
        var fit = CurveFitter.Fit(Masses, Points());
        Assert.Equal(41_000 + 400 * 50, fit.ZeroCounts, 4 * fit.ZeroUncertaintyCounts);
        Assert.InRange(fit.ZeroUncertaintyCounts, 1, 20);
        Assert.InRange(fit.Choice.Fit.ResidualSd, 0.01, 0.04);
    }

    static CurveFit With(params IReadOnlyList<string> labels) => CurveFitter.Fit(
        new MassSet([.. Masses.Masses.Select(m => labels.Contains(m.Label) ? m with { Kg = m.Kg + m.StandardUncertaintyKg } : m)]), Points());

    static double Kg(CurveFit fit, double x) => x * (fit.SpanKgPerCount + fit.CurvatureKgPerCount2 * x);

    static double Counts(CurveFit fit, double kg) => (Bench.Start with
    {
        SpanKgPerCount = fit.SpanKgPerCount,
        CurvatureKgPerCount2 = fit.CurvatureKgPerCount2,
    }).CountsAboveZero(kg);
}
