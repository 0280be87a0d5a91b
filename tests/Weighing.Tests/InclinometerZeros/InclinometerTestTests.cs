using ScaleLink.Weighing.InclinometerZeros;

namespace Weighing.Tests.InclinometerZeros;

/// <summary>
/// Reversal of a pad about the vertical. Plain geometry, derived here: in the pad's axes the ground's tilt changes its sign about both
/// axes and the zero does not; common practice, no published source.
/// </summary>
public class InclinometerTestTests
{
    private static readonly DateTimeOffset At = new(2026, 11, 28, 9, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Half_the_sum_about_each_axis_is_the_zero_and_half_the_difference_the_ground()
    {
        var (zero, refused) = Test(Lying(0.6, -0.25), Turned(0.6, -0.25), Lying(0.6, -0.25), Turned(0.6, -0.25)).Outcome();
        Assert.Null(refused);
        Assert.Equal(0.3, zero!.PitchDeg, 1e-12);
        Assert.Equal(-0.1, zero.RollDeg, 1e-12);
        Assert.Equal(0.6, zero.GroundPitchDeg, 1e-12);
        Assert.Equal(-0.25, zero.GroundRollDeg, 1e-12);
        // Four readings good to 0.02 degree each, their repeatability of 0.001 besides: the mean of four.
        Assert.Equal(Math.Sqrt(0.02 * 0.02 + 0.001 * 0.001) / 2, zero.StandardUncertaintyDeg, 1e-12);
        Assert.True(zero.StandardUncertaintyDeg < InclinometerZero.UntestedDeg / 10);
    }

    [Fact]
    public void Pairs_that_vary_widen_the_uncertainty_and_beyond_reason_they_are_refused()
    {
        var (zero, _) = Test(Lying(0.6, 0), Turned(0.6, 0), Lying(0.66, 0), Turned(0.58, 0)).Outcome();
        // Zeros 0.30 and 0.34: each 0.02 from their mean, whose standard deviation is 0.02.
        Assert.Equal(0.02, zero!.StandardUncertaintyDeg, 1e-9);
        Assert.Equal(PatchCodes.ReversalDisagrees, Test(Lying(0.6, 0), Turned(0.6, 0), Lying(0.6, 0.25), Turned(0.6, 0)).Outcome().Refused!.Code);
    }

    [Fact]
    public void A_pad_that_was_not_turned_is_refused_where_the_ground_tilts()
    {
        Assert.Equal(InclinometerCodes.TurnNotSeen, Test(Lying(0.6, 0)).WhyNot(Lying(0.6, 0.01))!.Code);
        var turned = Test(Lying(0.6, 0), Turned(0.6, 0));
        Assert.Equal(InclinometerCodes.NotTurned, turned.WhyNot(Turned(0.6, 0))!.Code);
        // The first turn was seen: whatever the crew says, this one was none.
        Assert.Equal(InclinometerCodes.NotTurned, turned.WhyNot(Turned(0.6, 0) with { SaidTurned = true })!.Code);
        Assert.Null(turned.WhyNot(Lying(0.6, 0)));
    }

    [Fact]
    public void On_level_ground_the_crew_has_to_say_once_that_it_was_turned()
    {
        var first = Test(Lying(0, 0));
        Assert.Equal(InclinometerCodes.TurnNotSeen, first.WhyNot(Turned(0, 0))!.Code);
        var said = Turned(0, 0) with { SaidTurned = true };
        Assert.Null(first.WhyNot(said));
        var level = first.With(said);
        Assert.Null(level.WhyNot(Lying(0, 0)));
        var (zero, _) = level.With(Lying(0, 0)).With(Turned(0, 0)).Outcome();
        Assert.Equal(0.3, zero!.PitchDeg, 1e-12);
    }

    [Fact]
    public void A_lean_about_one_axis_alone_shows_the_turn() => Assert.Null(Test(Lying(0, 0.2)).WhyNot(Turned(0, 0.2)));

    [Fact]
    public void A_zero_beyond_a_mounting_error_and_a_test_that_is_not_over_give_none()
    {
        TiltReading[] far = [.. new[] { 0.5, -0.5, 0.5, -0.5 }.Select(ground => new TiltReading(1.2 + ground, 0, 0.001, At))];
        Assert.Equal(InclinometerCodes.ZeroTooLarge, Test(far).Outcome().Refused!.Code);
        Assert.Equal(InclinometerCodes.OutOfStep, Test(far[..3]).Outcome().Refused!.Code);
    }

    [Fact]
    public void Which_way_round_comes_next_goes_to_and_fro()
    {
        Assert.Equal((1, false), (Test().NextNumber, Test().NextIsTurned));
        Assert.Equal((2, true), (Test(Lying(1, 0)).NextNumber, Test(Lying(1, 0)).NextIsTurned));
        Assert.Equal((3, false), (Test(Lying(1, 0), Turned(1, 0)).NextNumber, Test(Lying(1, 0), Turned(1, 0)).NextIsTurned));
    }

    private static InclinometerTest Test(params TiltReading[] readings) => new(readings);

    // A zero of 0.3 and -0.1 degree in each.
    private static TiltReading Lying(double pitch, double roll) => new(0.3 + pitch, -0.1 + roll, 0.001, At);

    private static TiltReading Turned(double pitch, double roll) => Lying(-pitch, -roll);
}
