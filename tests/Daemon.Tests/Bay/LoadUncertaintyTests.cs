using ScaleLink.Daemon.Bay;
using ScaleLink.Measure;

namespace Daemon.Tests.Bay;

/// <summary>Uncertainty of four calibrations in what is made of four loads. Source: JCGM 100:2008 (GUM) 5.1.2, 5.2.2, G.4.1; numbers by hand.</summary>
public class LoadUncertaintyTests
{
    private static readonly LoadUncertainty Uncertainty = new(_ => new CalibrationUncertainty(0.03, 0, 0, 0.04, 10), _ => 0);

    [Fact]
    public void In_the_total_masses_that_err_together_add_up() =>
        Assert.Equal(Math.Sqrt(0.1 * 0.1 + 4 * 0.03 * 0.03 + 0.16 * 0.16), Uncertainty.Combine(new Value(1000, 0.1), Corners.Same(1))!.Value.StandardUncertainty!.Value, 1e-12);

    [Fact]
    public void In_a_difference_masses_that_err_apart_are_the_worse() =>
        Assert.Equal(Math.Sqrt(2 * 0.03 * 0.03 + 2 * 0.04 * 0.04), Uncertainty.Combine(new Value(5, 0), new Corners(1, -1, 0, 0))!.Value.StandardUncertainty!.Value, 1e-12);

    [Fact]
    public void What_errs_alike_adds_up_in_the_total_and_drops_out_of_differences()
    {
        var alike = new LoadUncertainty(_ => new CalibrationUncertainty(0.03, 0.04, 0.05, 0, 10), _ => 0);
        Assert.Equal(Math.Sqrt(4 * 0.05 * 0.05 + 0.2 * 0.2), alike.Combine(new Value(1000, 0), Corners.Same(1))!.Value.StandardUncertainty!.Value, 1e-12);
        Assert.Equal(Math.Sqrt(2) * 0.05, alike.Combine(new Value(5, 0), new Corners(1, -1, 0, 0))!.Value.StandardUncertainty!.Value, 1e-12);
    }

    [Fact]
    public void Few_points_of_one_pad_show_in_its_degrees_of_freedom()
    {
        var one = Uncertainty.Combine(new Value(250, 0), new Corners(1, 0, 0, 0))!.Value;
        Assert.Equal(0.05, one.StandardUncertainty!.Value, 1e-12);
        Assert.Equal(10, one.DegreesOfFreedom!.Value, 1e-9);
        Assert.Null(new LoadUncertainty(_ => new CalibrationUncertainty(0.03, 0, 0, 0.04, double.PositiveInfinity), _ => 0).Combine(new Value(1, 0.1), Corners.Same(1))!.Value.DegreesOfFreedom);
    }

    [Fact]
    public void Where_rocking_is_not_known_nothing_is_claimed() => Assert.Null(Uncertainty.Combine(new Value(250, null), Corners.Same(1))!.Value.StandardUncertainty);

    [Fact]
    public void Each_inclinometer_errs_by_itself()
    {
        var tilted = new LoadUncertainty(_ => new CalibrationUncertainty(0.03, 0, 0, 0, 10), c => c == Corner.RF ? 0.04 : 0);
        Assert.Equal(0.05, tilted.Combine(new Value(250, 0), new Corners(0, 1, 0, 0))!.Value.StandardUncertainty!.Value, 1e-12);
        Assert.Equal(0.03, tilted.Combine(new Value(250, 0), new Corners(1, 0, 0, 0))!.Value.StandardUncertainty!.Value, 1e-12);
        // Welch and Satterthwaite: 0.05^4 / (0.03^4 / 10).
        Assert.Equal(77.16, tilted.Combine(new Value(250, 0), new Corners(0, 1, 0, 0))!.Value.DegreesOfFreedom!.Value, 0.01);
    }
}
