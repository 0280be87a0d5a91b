using CsCheck;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;

namespace Client.Tests.Terminal;

public class BeamTests
{
    [Fact]
    public void The_notch_is_as_wide_as_the_uncertainty_and_lies_at_the_target() =>
        Gen.Select(Gen.Double[46, 54], Gen.Double[0.01, 2], Gen.Int[60, 240]).Sample((cross, expanded, width) =>
        {
            var loads = Readouts.Settled(cross, expanded);
            var scale = BeamScale.For(loads, width);
            var (first, last) = scale.Notch(loads)!.Value;
            var columnsPerPercent = scale.HalfWidth / 0.5;
            return first <= scale.ColumnOf(50) && last >= scale.ColumnOf(50) && Math.Abs(last - first - 2 * expanded * columnsPerPercent) <= 1.0
                || first == scale.Centre - scale.HalfWidth || last == scale.Centre + scale.HalfWidth;
        });

    [Fact]
    public void Without_a_claim_the_notch_has_no_width() => Assert.Null(BeamScale.For(Readouts.Moving(), 80).Notch(Readouts.Moving()));

    [Theory]
    [InlineData(52.0, 1)]
    [InlineData(48.0, -1)]
    [InlineData(50.0, 0)]
    public void The_heavier_diagonal_hangs_lower(double cross, int sign)
    {
        var canvas = new Canvas(80, 5);
        var loads = Readouts.Settled(cross);
        BeamPicture.Draw(canvas, 0, 5, loads, BeamScale.For(loads, 80), Glyphs.Plain);
        var lines = canvas.ToLines(false).ToList();
        Assert.Equal(sign, Math.Sign(lines.FindIndex(l => l.Contains("RF+LR")) - lines.FindIndex(l => l.Contains("LF+RR"))));
    }

    [Fact]
    public void Both_arms_together_carry_the_total()
    {
        var loads = Readouts.Settled();
        var (one, other) = (loads.DiagonalKg(true)!.Value, loads.DiagonalKg(false)!.Value);
        Assert.Equal(loads.TotalKg.Estimate, one.Estimate + other.Estimate, 9);
        Assert.Equal(loads.Corners[1].LoadKg.Estimate + loads.Corners[2].LoadKg.Estimate, one.Estimate, 0.1);
    }
}
