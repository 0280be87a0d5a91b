using ScaleLink.Measure;

namespace Measure.Tests;

/// <summary>Guarded acceptance, JCGM 106:2012, 8.3: it conforms only when the whole interval does.</summary>
public class TargetBandTests
{
    private static readonly TargetBand Band = new(50, 0.2);

    [Theory]
    [InlineData(50.0, 0.1, Aim.Within)]
    [InlineData(50.15, 0.1, Aim.TooCloseToTell)]
    [InlineData(50.25, 0.1, Aim.TooCloseToTell)]
    [InlineData(50.35, 0.1, Aim.High)]
    [InlineData(49.65, 0.1, Aim.Low)]
    [InlineData(50.0, 0.3, Aim.TooCloseToTell)]
    [InlineData(double.NaN, 0.3, Aim.Unknown)]
    public void The_whole_interval_decides(double estimate, double expanded, Aim aim) =>
        Assert.Equal(aim, Band.Judge(new(estimate, expanded / Coverage.Factor())));

    [Fact]
    public void Without_a_claim_there_is_no_verdict() => Assert.Equal(Aim.Unknown, Band.Judge(new(50, null)));

    [Fact]
    public void Few_degrees_of_freedom_widen_the_interval()
    {
        Assert.Equal(Aim.Within, Band.Judge(new(50, 0.05)));
        Assert.Equal(Aim.TooCloseToTell, Band.Judge(new(50, 0.05, 2)));
    }
}
