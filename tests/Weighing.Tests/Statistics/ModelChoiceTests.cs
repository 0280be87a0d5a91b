using ScaleLink.Weighing.Statistics;

namespace Weighing.Tests.Statistics;

/// <summary>No published source: what a careful choice must do, on simulated data of known shape.</summary>
public class ModelChoiceTests
{
    static readonly double[] Loads = [.. Enumerable.Range(0, 3).SelectMany(_ => new double[] { 0, 90, 180, 270, 360, 450 })];

    [Fact]
    public void A_straight_pad_is_called_curved_at_most_as_often_as_the_stated_chance()
    {
        var random = new Random(20);
        var curved = Enumerable.Range(0, 2000).Count(_ => Choose(random, bow: 0).Rung > 0);
        // 1 % of 2000 is 20; the lack of fit test asks for more, so fewer are expected.
        Assert.InRange(curved, 1, 30);
    }

    [Fact]
    public void A_bow_well_above_the_repeatability_is_always_seen()
    {
        var random = new Random(21);
        Assert.All(Enumerable.Range(0, 200), _ => Assert.Equal(1, Choose(random, bow: 0.2).Rung));
    }

    [Fact]
    public void Three_points_never_carry_a_curve()
    {
        double[] x = [0, 1, 2, 0, 1, 2], y = [0, 1.2, 2, 0.001, 1.201, 2.001];
        Assert.Equal(0, ModelChoice.Choose(y, [Design.Line(x), Design.Quadratic(x)], EachLevel(x), x).Rung);
    }

    [Fact]
    public void Without_repeats_a_bow_shows_in_the_signs_of_the_residuals()
    {
        var x = Enumerable.Range(0, 10).Select(i => 50.0 * i).ToArray();
        var random = new Random(3);
        double[] y = [.. x.Select(v => v + 0.5 * v * (450 - v) / (225 * 225) + 0.02 * (random.NextDouble() - 0.5))];
        var choice = ModelChoice.Choose(y, [Design.Line(x), Design.Quadratic(x)], null, x);
        Assert.Equal(1, choice.Rung);
        Assert.True(SignRuns.Of(LeastSquares.Fit(Design.Line(x), y).Residuals).Deviation < -1.5);
    }

    [Fact]
    public void A_shape_that_no_model_of_the_ladder_has_is_reported()
    {
        var random = new Random(5);
        double[] y = [.. Loads.Select(v => v + (v == 270 ? 0.5 : 0) + 0.02 * (random.NextDouble() - 0.5))];
        Assert.True(ModelChoice.Choose(y, [Design.Line(Loads), Design.Quadratic(Loads)], EachLevel(Loads), Loads).Contradicted);
    }

    static ModelChoice Choose(Random random, double bow)
    {
        double[] y = [.. Loads.Select(v => v + bow * v * (450 - v) / (225 * 225) + 0.02 * Normal(random))];
        return ModelChoice.Choose(y, [Design.Line(Loads), Design.Quadratic(Loads)], EachLevel(Loads), Loads);
    }

    static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    static double[,] EachLevel(double[] x)
    {
        var levels = x.Distinct().ToList();
        var design = new double[x.Length, levels.Count];
        for (var i = 0; i < x.Length; i++)
            design[i, levels.IndexOf(x[i])] = 1;
        return design;
    }
}
