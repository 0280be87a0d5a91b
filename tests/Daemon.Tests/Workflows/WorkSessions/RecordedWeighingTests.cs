using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;

namespace Daemon.Tests.Workflows.WorkSessions;

/// <summary>What a weighing on record states of its sums. Source: JCGM 100:2008 (GUM) 5.2.2 with note 1, F.1.2.3; numbers by hand.</summary>
public class RecordedWeighingTests
{
    private static readonly RecordedWeighing Weighing = new()
    {
        LoadsKg = Corners.Same(250), RepeatUKg = Corners.Same(0.03), StandingUKg = Corners.Same(Math.Sqrt(0.04 * 0.04 + 0.05 * 0.05 + 0.06 * 0.06)),
        AlikeUKg = Corners.Same(0.05), PerhapsAlikeUKg = Corners.Same(0.06), Calibrations = ["a", "b", "c", "d"], NominalOnly = [],
        StartId = "start", Seq = 1, RestSinceNs = 1,
    };

    [Fact]
    public void In_the_total_what_errs_alike_and_what_may_err_alike_add_up() =>
        Assert.Equal(Math.Sqrt(4 * (0.03 * 0.03 + 0.04 * 0.04) + 0.2 * 0.2 + 0.24 * 0.24), Weighing.Whole.TotalKg.Uncertainty, 1e-12);

    [Fact]
    public void In_a_difference_the_one_drops_out_and_the_other_counts_apart() =>
        Assert.Equal(Math.Sqrt(2 * (0.03 * 0.03 + 0.04 * 0.04 + 0.06 * 0.06)), Weighing.Whole.FrontLeftRightDifferenceKg.Uncertainty, 1e-12);

    [Fact]
    public void A_weighing_of_before_says_what_it_always_said()
    {
        var before = Weighing with { AlikeUKg = default, PerhapsAlikeUKg = default };
        Assert.Equal(2 * Math.Sqrt(0.03 * 0.03 + 0.04 * 0.04 + 0.05 * 0.05 + 0.06 * 0.06), before.Whole.TotalKg.Uncertainty, 1e-12);
    }
}
