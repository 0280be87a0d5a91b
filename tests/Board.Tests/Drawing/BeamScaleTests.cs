using CsCheck;
using ScaleLink.Api.V1;
using ScaleLink.Board.Drawing;

namespace Board.Tests.Drawing;

/// <summary>The beam tilts by the real difference, and its scale keeps still.</summary>
public class BeamScaleTests
{
    [Fact]
    public void The_heavier_diagonal_goes_down_in_proportion()
    {
        var scale = BeamScale.Widest.For(Loads(51));
        Assert.Equal(0, scale.Tilt(50));
        Assert.Equal(2 * scale.Tilt(50.5), scale.Tilt(51), 9);
        Assert.Equal(-scale.Tilt(51), scale.Tilt(49), 9);
        Assert.True(scale.Tilt(51) > 0, "RF + LR is on the right arm, which goes down.");
    }

    [Fact]
    public void Value_and_target_always_find_room() =>
        Gen.Double[5, 95].Select(Gen.Double[40, 60]).Sample((cross, target) =>
        {
            var loads = Loads(cross, target);
            var span = BeamScale.Widest.For(loads).SpanPercent;
            Assert.True(Math.Abs(cross - 50) <= span && Math.Abs(target - 50) + 0.2 <= span);
        });

    [Fact]
    public void A_value_that_trembles_at_an_edge_does_not_change_the_scale_again_and_again()
    {
        var scale = BeamScale.Widest.For(Loads(50.9));
        var changes = 0;
        for (var k = 0; k < 100; k++)
        {
            var next = scale.For(Loads(k % 2 == 0 ? 50.97 : 51.03));
            changes += next == scale ? 0 : 1;
            scale = next;
        }

        Assert.InRange(changes, 0, 1);
    }

    [Fact]
    public void A_raised_car_leaves_the_scale_where_it_was()
    {
        var scale = BeamScale.Widest.For(Loads(52));
        Assert.Equal(scale, scale.For(new Loads { Verdict = Verdict.Raised, Target = new Target { CrossWeightPercent = 50, TolerancePercent = 0.2 } }));
    }

    private static Loads Loads(double cross, double target = 50) => new()
    {
        CrossWeightPercent = new MeasuredValue { Estimate = cross },
        Target = new Target { CrossWeightPercent = target, TolerancePercent = 0.2 },
    };
}
