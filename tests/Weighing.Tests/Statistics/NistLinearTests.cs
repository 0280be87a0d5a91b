using System.Text.Json;
using ScaleLink.Weighing.Statistics;

namespace Weighing.Tests.Statistics;

/// <summary>
/// Certified values of NIST/ITL Statistical Reference Datasets (StRD), linear least squares: Pontius (a load cell),
/// Norris, NoInt1, NoInt2.
/// </summary>
public class NistLinearTests
{
    const double Wanted = 9;

    public static TheoryData<string> Sets => ["pontius", "norris", "noint1", "noint2"];

    [Theory, MemberData(nameof(Sets))]
    public void Fits_reproduce_the_certified_values(string set)
    {
        var (fit, certified) = Fit(set);

        var coefficients = certified.GetProperty("coefficients").EnumerateObject().Select(p => p.Value).ToList();
        Assert.Equal(coefficients.Count, fit.Coefficients.Count);
        for (var i = 0; i < coefficients.Count; i++)
        {
            Digits.AtLeast(Wanted, fit.Coefficients[i], Value(coefficients[i], "estimate"), $"{set} B{i}");
            Digits.AtLeast(Wanted, fit.StandardDeviation(i), Value(coefficients[i], "standard_deviation"), $"{set} sd {i}");
        }
        Digits.AtLeast(Wanted, fit.ResidualSd, Value(certified, "residual_standard_deviation"), $"{set} residual sd");
        Digits.AtLeast(Wanted, fit.RSquared, Value(certified, "r_squared"), $"{set} R2");
        var anova = certified.GetProperty("anova");
        Digits.AtLeast(Wanted, fit.ResidualSumOfSquares, Value(anova, "residual_ss"), $"{set} residual sum of squares");
        Assert.Equal(anova.GetProperty("residual_df").GetInt32(), fit.DegreesOfFreedom);
    }

    [Theory, MemberData(nameof(Sets))]
    public void Covariances_agree_with_exact_rational_arithmetic(string set)
    {
        var (fit, certified) = Fit(set);
        var rows = certified.GetProperty("derived_not_certified").GetProperty("covariance").EnumerateArray().ToList();
        for (var i = 0; i < rows.Count; i++)
            for (var j = 0; j < rows.Count; j++)
                Digits.AtLeast(Wanted, fit.Covariance[i, j], ReferenceData.Number(rows[i][j].GetString()!), $"{set} cov {i}{j}");
    }

    [Fact]
    public void A_load_cell_with_repeats_is_seen_to_be_curved()
    {
        var x = ReferenceData.Column("nist-strd-pontius.csv", "x");
        Assert.Equal(2, Choose("nist-strd-pontius.csv", EachPoint(x)).Rung);
    }

    [Fact]
    public void A_straight_instrument_is_left_straight()
    {
        // Norris through zero, with a constant, with a square: its certified constant is about one SD from zero.
        Assert.Equal(0, Choose("nist-strd-norris.csv", null).Rung);
    }

    static ModelChoice Choose(string file, double[,]? everyPoint)
    {
        var x = ReferenceData.Column(file, "x");
        return ModelChoice.Choose(
            ReferenceData.Column(file, "y"), [Design.ThroughZero(x), Design.Line(x), Design.Quadratic(x)], everyPoint, x);
    }

    static double[,] EachPoint(double[] x)
    {
        var levels = x.Distinct().ToList();
        var design = new double[x.Length, levels.Count];
        for (var i = 0; i < x.Length; i++)
            design[i, levels.IndexOf(x[i])] = 1;
        return design;
    }

    static (LinearFit Fit, JsonElement Certified) Fit(string set)
    {
        var certified = ReferenceData.Json("nist-strd-linear-certified.json").GetProperty("datasets").GetProperty(set);
        var file = certified.GetProperty("file").GetString()!;
        var x = ReferenceData.Column(file, "x");
        var design = set switch { "pontius" => Design.Quadratic(x), "norris" => Design.Line(x), _ => Design.ThroughZero(x) };
        return (LeastSquares.Fit(design, ReferenceData.Column(file, "y")), certified);
    }

    static double Value(JsonElement element, string name) => element.GetProperty(name).GetDouble();
}
