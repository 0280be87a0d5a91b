using ScaleLink.Weighing.Calibration.Masses;

namespace Weighing.Tests.Calibration.Coverage;

/// <summary>
/// Short form of the coverage study; the long form is the benchmark "coverage". With 200 trials the share of a true 95 %
/// varies by 1.5 %, so the bounds here are the targets widened by about one and a half of those.
/// </summary>
public class CoverageTests
{
    const int Trials = 200;
    const double Slack = 0.023;

    [Theory]
    [InlineData(0)]
    [InlineData(0.3)]
    public void With_repeatability_alone_the_interval_of_the_fit_holds_the_truth_93_to_97_times_in_a_hundred(double bowKg) =>
        Assert.All(new CoverageStudy(Trials, seed: 11).Noise(bowKg), f => Assert.InRange(f.Covered, 0.93 - Slack, 0.97 + Slack));

    [Fact]
    public void A_bow_too_faint_to_be_seen_is_still_inside_the_interval() =>
        Assert.All(new CoverageStudy(Trials, seed: 15).FaintBow(0.02), f => Assert.True(f.Covered >= 0.93 - Slack, f.ToString()));

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void With_every_error_of_the_budget_the_interval_holds_the_truth_at_least_93_times_in_a_hundred(bool together)
    {
        var figures = new CoverageStudy(Trials, seed: 12).Full(WeightClass.M1, together);
        Assert.All(figures, f => Assert.True(f.Covered >= 0.93 - Slack, f.ToString()));
        Assert.All(figures, f => Assert.True(f.Refused < 0.005, f.ToString()));
    }

    [Fact]
    public void Built_up_with_ballast_the_interval_still_holds_the_truth() =>
        Assert.All(new CoverageStudy(Trials, seed: 14).Substituted(), f => Assert.True(f.Covered >= 0.93 - Slack, f.ToString()));

    [Fact]
    public void The_study_would_notice_an_interval_that_is_too_narrow()
    {
        // An interval of 1.4 standard uncertainties covers 84 %.
        var figures = new CoverageStudy(Trials, seed: 13).Noise(0, coverage: 0.84);
        Assert.All(figures, f => Assert.InRange(f.Covered, 0.79, 0.89));
    }
}
