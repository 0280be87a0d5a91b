using ScaleLink.Weighing.Statistics;

namespace Weighing.Tests.Statistics;

/// <summary>The worked examples of JCGM 100:2008 (GUM), annex H; values as tests/reference/gum-examples.json states them.</summary>
public class GumExampleTests
{
    static readonly System.Text.Json.JsonElement Gum = ReferenceData.Json("gum-examples.json");

    [Fact]
    public void H1_end_gauge_budget_and_effective_degrees_of_freedom()
    {
        var example = Gum.GetProperty("H1_end_gauge");
        UncertaintyBudget budget = new(
        [
            new("l_s", 25, 18),
            new("d_theta", 50000623 * 11.5e-6 * TypeB.Rectangular(0.05), 2),
            new("d2", 6.7, 8),
            new("d0", 5.8, 24),
            new("d1", 3.9, 5),
            // Sensitivity l_s times the mean temperature's departure, 0.1 degree.
            new("d_alpha", 50000623 * 0.1 * TypeB.Rectangular(1e-6), 50),
        ]);

        foreach (var term in budget.Terms)
            Assert.Equal(example.GetProperty("budget_nm").GetProperty(term.Name).GetDouble(), term.StandardUncertainty, 3);
        Assert.Equal(example.GetProperty("u_c_nm_published").GetDouble(), Math.Round(budget.StandardUncertainty));
        Assert.Equal(example.GetProperty("u_c_nm_exact").GetDouble(), budget.StandardUncertainty, 6);
        Assert.Equal(example.GetProperty("nu_eff_published").GetDouble(), budget.DegreesOfFreedom, 0.06);
        Assert.Equal(example.GetProperty("nu_eff_exact").GetDouble(), budget.DegreesOfFreedom, 6);
        // Published 93 nm: 2.92 times the rounded 32 nm; unrounded it is 92.5.
        Assert.Equal(example.GetProperty("U99_nm_published").GetDouble(), budget.Expanded(0.99), 1.0);
        Assert.Equal("l_s", budget.Largest.Name);
    }

    [Fact]
    public void H2_correlated_means_carry_their_covariance_into_the_results()
    {
        var example = Gum.GetProperty("H2_resistance_reactance");
        double[] Raw(string name) => [.. example.GetProperty("raw").GetProperty(name).EnumerateArray().Select(v => v.GetDouble())];
        var means = MeanCovariance.Of([Raw("V_V"), [.. Raw("I_mA").Select(i => i / 1000)], Raw("phi_rad")]);
        Assert.Equal(example.GetProperty("r").GetProperty("V,I").GetDouble(), means.Correlation(0, 1), 10);
        Assert.Equal(example.GetProperty("r").GetProperty("V,phi").GetDouble(), means.Correlation(0, 2), 10);
        Assert.Equal(example.GetProperty("r").GetProperty("I,phi").GetDouble(), means.Correlation(1, 2), 10);

        double v = means.Means[0], i = means.Means[1], phi = means.Means[2];
        double r = v / i * Math.Cos(phi), x = v / i * Math.Sin(phi), z = v / i;
        double[,] sensitivity = { { r / v, -r / i, -x }, { x / v, -x / i, r }, { z / v, -z / i, 0 } };
        var covariance = Matrices.Propagate(sensitivity, means.Covariance);

        var results = example.GetProperty("results");
        double Expect(string name) => results.GetProperty(name).GetDouble();
        Digits.AtLeast(9, r, Expect("R"), "R");
        Digits.AtLeast(9, x, Expect("X"), "X");
        Digits.AtLeast(9, z, Expect("Z"), "Z");
        Digits.AtLeast(9, Math.Sqrt(covariance[0, 0]), Expect("u_R"), "u(R)");
        Digits.AtLeast(9, Math.Sqrt(covariance[1, 1]), Expect("u_X"), "u(X)");
        Digits.AtLeast(9, Math.Sqrt(covariance[2, 2]), Expect("u_Z"), "u(Z)");
        Digits.AtLeast(9, covariance[0, 1] / Math.Sqrt(covariance[0, 0] * covariance[1, 1]), Expect("r_RX"), "r(R, X)");
        Digits.AtLeast(9, covariance[0, 2] / Math.Sqrt(covariance[0, 0] * covariance[2, 2]), Expect("r_RZ"), "r(R, Z)");
        Digits.AtLeast(9, covariance[1, 2] / Math.Sqrt(covariance[1, 1] * covariance[2, 2]), Expect("r_XZ"), "r(X, Z)");
    }

    [Fact]
    public void H3_thermometer_calibration_line()
    {
        var fit = Thermometer();
        var exact = Gum.GetProperty("H3_thermometer_calibration").GetProperty("exact");
        double Expect(string name) => exact.GetProperty(name).GetDouble();
        Digits.AtLeast(9, fit.Coefficients[0], Expect("y1"), "y1");
        Digits.AtLeast(9, fit.Coefficients[1], Expect("y2"), "y2");
        Digits.AtLeast(9, fit.StandardDeviation(0), Expect("u_y1"), "u(y1)");
        Digits.AtLeast(9, fit.StandardDeviation(1), Expect("u_y2"), "u(y2)");
        Digits.AtLeast(9, fit.Correlation(0, 1), Expect("r"), "r(y1, y2)");
        Digits.AtLeast(9, fit.ResidualSd, Expect("s"), "s");
        var (value, u) = fit.At([1, 30 - 20.0]);
        Digits.AtLeast(9, value, Expect("b_30"), "b(30)");
        Digits.AtLeast(9, u, Expect("u_b_30"), "u(b(30))");

        var published = Gum.GetProperty("H3_thermometer_calibration").GetProperty("published");
        Assert.Equal(published.GetProperty("b_at_30C_C").GetDouble(), value, 4);
        Assert.Equal(published.GetProperty("u_b_at_30C_C").GetDouble(), u, 4);
    }

    [Fact]
    public void H3_an_error_shared_by_all_points_moves_the_constant_alone()
    {
        var fit = Thermometer();
        var common = new double[fit.Residuals.Count, fit.Residuals.Count];
        for (var i = 0; i < fit.Residuals.Count; i++)
            for (var j = 0; j < fit.Residuals.Count; j++)
                common[i, j] = 0.005 * 0.005;
        var shared = Matrices.Propagate(HouseholderQr.Of(ThermometerDesign()).PseudoInverse(), common);

        var expected = Gum.GetProperty("H3_thermometer_calibration").GetProperty("with_common_systematic_0.005C");
        UncertaintyBudget constant = new(
            [new("fit", fit.StandardDeviation(0), 9), new("reference", Math.Sqrt(shared[0, 0]))]);
        Digits.AtLeast(9, constant.StandardUncertainty, expected.GetProperty("u_y1").GetDouble(), "u(y1)");
        Digits.AtLeast(9, constant.DegreesOfFreedom, expected.GetProperty("nu_y1").GetDouble(), "dof(y1)");
        Assert.Equal(0, shared[1, 1], 15);
    }

    [Fact]
    public void H3_the_same_line_comes_out_of_a_fit_with_the_full_covariance()
    {
        // Equal variances and one common error: the best linear estimate is the plain line, its covariance as above.
        var fit = Thermometer();
        var n = fit.Residuals.Count;
        var covariance = new double[n, n];
        for (var i = 0; i < n; i++)
            for (var j = 0; j < n; j++)
                covariance[i, j] = 0.005 * 0.005 + (i == j ? fit.ResidualSd * fit.ResidualSd : 0);
        var general = LeastSquares.Generalised(ThermometerDesign(), Corrections(), covariance);

        Digits.AtLeast(9, general.Coefficients[0], fit.Coefficients[0], "y1");
        Digits.AtLeast(9, general.Coefficients[1], fit.Coefficients[1], "y2");
        Digits.AtLeast(9, general.StandardDeviation(0), 0.00576893138292676, "u(y1), GTC documentation of GUM H.3");
        Digits.AtLeast(9, general.StandardDeviation(1), fit.StandardDeviation(1), "u(y2)");
    }

    static LinearFit Thermometer() => LeastSquares.Fit(ThermometerDesign(), Corrections());

    static double[] Corrections() => ReferenceData.Column("gum-h3-thermometer.csv", "b_C");

    static double[,] ThermometerDesign() =>
        Design.Line([.. ReferenceData.Column("gum-h3-thermometer.csv", "t_C").Select(t => t - 20)]);
}
