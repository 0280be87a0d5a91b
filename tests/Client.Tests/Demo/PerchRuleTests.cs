using CsCheck;
using ScaleLink.Client.Demo;
using ScaleLink.Client.Readings;

namespace Client.Tests.Demo;

public class PerchRuleTests
{
    private const double Target = 50, Tolerance = 0.2, U = 0.03;

    [Theory]
    [InlineData(52, -0.25)]
    [InlineData(48, 0.25)]
    public void The_first_turn_is_modest_and_goes_the_right_way(double cross, double turns)
    {
        var move = PerchRule.Next([new PerchReading(cross, U, 0)], Target);
        Assert.Equal((turns, null), (move.Turns, move.PredictedPercent));
    }

    [Fact]
    public void The_next_turn_follows_from_the_measured_effect()
    {
        var move = PerchRule.Next([new PerchReading(52, U, 0), new PerchReading(51.5, U, -0.25)], Target);
        Assert.Equal(-0.75, move.Turns);
        Assert.Equal(50, move.PredictedPercent!.Value, 6);
    }

    [Fact]
    public void An_effect_that_the_uncertainty_explains_is_not_believed()
    {
        var move = PerchRule.Next([new PerchReading(52, U, 0), new PerchReading(51.97, U, -0.25)], Target);
        Assert.Equal((-0.5, null), (move.Turns, move.PredictedPercent));
    }

    [Fact]
    public void An_effect_the_wrong_way_round_is_not_believed()
    {
        var move = PerchRule.Next([new PerchReading(52, U, 0), new PerchReading(52.3, U, -0.25)], Target);
        Assert.Equal(-0.5, move.Turns);
    }

    [Fact]
    public void A_car_of_any_ordinary_stiffness_comes_on_target_in_few_turns_although_its_friction_scatters() =>
        Gen.Select(Gen.Double[46, 54], Gen.Double[0.7, 2.6], Gen.Int[0, 100_000]).Sample((start, perTurn, seed) =>
        {
            var scatter = new Random(seed);
            var readings = new List<PerchReading>();
            var (cross, turns) = (start, 0.0);
            while (readings.Count < 13)
            {
                readings.Add(new PerchReading(cross + 0.04 * (2 * scatter.NextDouble() - 1), U, turns));
                if (Math.Abs(readings[^1].CrossWeightPercent - Target) + U <= Tolerance)
                    return true;
                turns = PerchRule.Next(readings, Target).Turns;
                cross += turns * perTurn;
            }

            return false;
        }, iter: 2000);

    [Theory]
    [InlineData(0.25, "RF, LR up ¼ turn, LF, RR down ¼", "RF, LR up 1/4 turn, LF, RR down 1/4")]
    [InlineData(-1.375, "LF, RR up 1⅜ turn, RF, LR down 1⅜", "LF, RR up 1 3/8 turn, RF, LR down 1 3/8")]
    [InlineData(1, "RF, LR up 1 turn, LF, RR down 1", "RF, LR up 1 turn, LF, RR down 1")]
    public void Turns_are_said_as_a_crew_says_them(double turns, string rich, string plain) =>
        Assert.Equal((rich, plain), (PerchWords.Of(turns, Glyphs.Rich), PerchWords.Of(turns, Glyphs.Plain)));
}
