using ScaleLink.Weighing.InclinometerZeros;

namespace Weighing.Tests.InclinometerZeros;

/// <summary>Reversal of levels: common practice, derived here.</summary>
public class ReversalTestTests
{
    [Fact]
    public void Half_sum_is_the_zero_and_half_difference_the_surface()
    {
        var test = ReversalTest.Of([(0.52, 0.28), (0.50, 0.30)], 0.02);

        Assert.Equal(0.4, test.ZeroDeg, 1e-12);
        Assert.Equal(0.11, test.TiltDeg, 1e-12);
        Assert.Equal(0.01, test.StandardUncertaintyDeg, 1e-12);
    }

    [Fact]
    public void An_instrument_that_does_not_repeat_or_was_read_once_is_refused()
    {
        Assert.Equal(PatchCodes.ReversalDisagrees, Assert.Throws<DiagnosticException>(() => ReversalTest.Of([(0.5, 0.3), (0.9, 0.3)], 0.02)).Diagnostics[0].Code);
        Assert.Equal(PatchCodes.ReversalDisagrees, Assert.Throws<DiagnosticException>(() => ReversalTest.Of([(0.5, 0.3)], 0.02)).Diagnostics[0].Code);
    }
}
