using CsCheck;
using ScaleLink.Api.V1;
using ScaleLink.Board.Age;
using ScaleLink.Board.Drawing;

namespace Board.Tests.Drawing;

/// <summary>The beam is level on its target, tilts by what lies beside it on one scale for all loads, and the last half percent shows under a lens.</summary>
public class BeamDrawingTests
{
    [Theory]
    [InlineData(50)]
    [InlineData(51.5)]
    public void Level_is_on_target_and_the_diagonal_that_is_too_heavy_goes_down_in_proportion(double target)
    {
        Assert.Equal(0, Of(target, target).TiltDegrees);
        Assert.Equal(2 * Of(target + 0.5, target).TiltDegrees!.Value, Of(target + 1, target).TiltDegrees!.Value, 9);
        Assert.Equal(-Of(target + 1, target).TiltDegrees!.Value, Of(target - 1, target).TiltDegrees!.Value, 9);
        Assert.True(Of(target + 1, target).TiltDegrees > 0, "RF + LR is on the right arm, which goes down.");
    }

    [Fact]
    public void One_scale_holds_for_all_loads_and_ends_where_it_says() => Gen.Double[5, 95].Select(Gen.Double[40, 60]).Sample((cross, target) =>
    {
        var drawing = Of(cross, target);
        Assert.Equal(Math.Clamp((cross - target) / 3, -1, 1) * 16, drawing.TiltDegrees!.Value, 9);
        Assert.Equal([-3, -1, 0, 1, 3], drawing.Marks.Select(m => Math.Round(double.Parse(m.Label) - target)));
    });

    [Fact]
    public void An_even_car_is_marked_where_that_is_not_the_target()
    {
        Assert.Null(Of(50, 50).EvenMark);
        Assert.NotNull(Of(50, 51).EvenMark);
        // The left end stands at the mark when both diagonals carry the same: higher than level for a target above 50.
        Assert.True(Of(50, 51).EvenMark!.Value.At.Y > BeamDrawing.LeftEnd.Y, "with 50 where 51 is wanted LF + RR is too heavy, and its end is down");
        Assert.Null(Of(50, 54).EvenMark);
    }

    [Theory]
    [InlineData(50.49, true)]
    [InlineData(50.51, false)]
    [InlineData(49.51, true)]
    [InlineData(49.49, false)]
    public void The_lens_shows_the_reading_within_half_a_percent_and_points_at_it_beyond(double cross, bool isInside)
    {
        var lens = Of(cross, 50).Lens;
        Assert.Equal(isInside, lens.HandShift is not null);
        Assert.Equal(isInside, lens.Pointer is null);
        Assert.Equal(isInside, lens.Interval is not null);
    }

    [Fact]
    public void The_lens_enlarges_in_the_direction_of_the_beam()
    {
        var (low, high) = (Of(49.8, 50).Lens.Interval!.Value, Of(50.2, 50).Lens.Interval!.Value);
        Assert.True(high.Y > low.Y, "more cross weight is further down, as at the hand of the beam");
        // 0.06 on either side of it, at 200 units a percent.
        Assert.Equal(0.12 * 200, high.Height, 6);
        Assert.Equal(0.4 * 200, Of(50, 50).Lens.Tolerance!.Value.Height, 6);
    }

    [Fact]
    public void A_raised_car_has_no_tilt_and_keeps_its_scale()
    {
        var drawing = new BeamDrawing(Live(new Loads { Verdict = Verdict.Raised, Target = Around(50) }));
        Assert.Null(drawing.TiltDegrees);
        Assert.Equal(5, drawing.Marks.Count());
        Assert.Null(drawing.Lens.HandShift);
        Assert.Null(drawing.Lens.Pointer);
    }

    private static BeamDrawing Of(double cross, double target) => new(Live(new Loads
    {
        // U = 0.06 for 95 % by the normal distribution.
        CrossWeightPercent = new MeasuredValue { Estimate = cross, StandardUncertainty = 0.06 / 1.959964 },
        Target = Around(target),
    }));

    private static Judged<Loads> Live(Loads loads) => new(Freshness.Live, loads, TimeSpan.Zero);

    private static Target Around(double target) => new() { CrossWeightPercent = target, TolerancePercent = 0.2 };
}
