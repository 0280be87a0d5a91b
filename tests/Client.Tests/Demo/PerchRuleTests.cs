using CsCheck;
using ScaleLink.Client.Demo;
using ScaleLink.Client.Readings;

namespace Client.Tests.Demo;

public class PerchRuleTests
{
    private const double Target = 50, Tolerance = 0.2, U = 0.03, WithCalibration = 0.12;

    [Theory]
    [InlineData(52, -2, 2)]
    [InlineData(48, 2, -2)]
    public void The_first_turn_is_a_modest_quarter_and_goes_the_right_way(double cross, int rightFront, int leftFront) =>
        Assert.Equal((new PerchMove(rightFront, leftFront), null), PerchRule.Next([Reading(cross)], Target));

    [Fact]
    public void The_next_turn_follows_from_the_measured_effect()
    {
        var (move, predicted) = PerchRule.Next([Reading(52), Reading(51.5, new(-2, 2))], Target);
        Assert.Equal(new PerchMove(-6, 6), move);
        Assert.Equal(50, predicted!.Value, 6);
    }

    [Fact]
    public void Large_moves_say_more_about_the_effect_than_small_ones()
    {
        // 15 eighths moved 1.5 %; then friction swallowed one eighth. The effect stays near 0.1 % an eighth.
        var (move, predicted) = PerchRule.Next([Reading(52), Reading(50.5, new(-7, 8)), Reading(50.5, new(-1, 0))], Target);
        Assert.Equal(-5, move.Effect);
        Assert.Equal(50, predicted!.Value, 0.01);
    }

    [Fact]
    public void An_effect_that_the_uncertainty_explains_is_not_believed() =>
        Assert.Equal((new PerchMove(-4, 4), null), PerchRule.Next([Reading(52), Reading(51.97, new(-2, 2))], Target));

    [Fact]
    public void An_effect_the_wrong_way_round_is_not_believed() =>
        Assert.Equal((new PerchMove(-4, 4), null), PerchRule.Next([Reading(52), Reading(52.3, new(-2, 2))], Target));

    [Fact]
    public void Odd_eighths_take_turns_so_that_the_height_is_kept()
    {
        var readings = new List<PerchReading> { Reading(50.62), Reading(50.12, new(-2, 2)) };
        var one = PerchRule.Next(readings, Target).Move;
        readings.Add(Reading(50.11, one));
        var other = PerchRule.Next(readings, Target).Move;
        Assert.Equal((-1, -1), (one.Effect, other.Effect));
        Assert.Equal(0, one.RightFrontPair + one.LeftFrontPair + other.RightFrontPair + other.LeftFrontPair);
    }

    [Fact]
    public void A_car_of_any_ordinary_stiffness_comes_on_target_in_few_turns_although_its_friction_scatters() =>
        Gen.Select(Gen.Double[46, 54], Gen.Double[0.7, 2.4], Gen.Int[0, 100_000]).Sample((start, perTurn, seed) =>
        {
            var scatter = new Random(seed);
            var readings = new List<PerchReading>();
            var (cross, move) = (start, new PerchMove());
            while (readings.Count < 13)
            {
                readings.Add(Reading(cross + 0.02 * (2 * scatter.NextDouble() - 1), move));
                if (Math.Abs(readings[^1].CrossWeightPercent - Target) + WithCalibration <= Tolerance)
                    return true;
                move = PerchRule.Next(readings, Target).Move;
                // An eighth at one pair is half of an eighth at both.
                cross += move.Effect * perTurn / 16;
            }

            return false;
        }, iter: 2000);

    [Theory]
    [InlineData(2, -2, "RF, LR up ¼ turn, LF, RR down ¼", "RF LR +1/4, LF RR -1/4")]
    [InlineData(-11, 11, "LF, RR up 1⅜ turn, RF, LR down 1⅜", "LF RR +1 3/8, RF LR -1 3/8")]
    [InlineData(0, -1, "LF, RR down ⅛ turn", "LF RR -1/8")]
    [InlineData(8, -7, "RF, LR up 1 turn, LF, RR down ⅞", "RF LR +1, LF RR -7/8")]
    public void Turns_are_said_as_a_crew_says_them(int rightFront, int leftFront, string words, string label) =>
        Assert.Equal((words, label), (PerchWords.Of(new(rightFront, leftFront), Glyphs.Rich), PerchWords.Label(new(rightFront, leftFront), Glyphs.Plain)));

    private static PerchReading Reading(double cross, PerchMove before = default) => new(cross, U, before);
}
