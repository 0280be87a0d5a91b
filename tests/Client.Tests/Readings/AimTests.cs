using ScaleLink.Api.V1;
using ScaleLink.Client.Readings;
using ScaleLink.Measure;

namespace Client.Tests.Readings;

/// <summary>Guarded acceptance: JCGM 106:2012, 8.3. Target 50.0, tolerance 0.2.</summary>
public class AimTests
{
    [Theory]
    [InlineData(50.16, 0.03, "within")]
    [InlineData(49.84, 0.03, "within")]
    [InlineData(50.18, 0.03, "too_close_to_tell")]
    [InlineData(50.22, 0.03, "too_close_to_tell")]
    [InlineData(50.24, 0.03, "high")]
    [InlineData(49.76, 0.03, "low")]
    [InlineData(50.00, 0.50, "too_close_to_tell")]
    public void A_reading_conforms_only_with_its_whole_interval(double cross, double expanded, string aim) =>
        Assert.Equal(aim, Words.Name(Readouts.Settled(cross, expanded).Aim));

    [Fact]
    public void A_car_that_moves_is_not_judged()
    {
        var loads = Readouts.Settled(50);
        loads.Verdict = Verdict.Settling;
        Assert.Equal(Aim.Unknown, loads.Aim);
    }

    [Fact]
    public void Without_a_target_there_is_no_verdict()
    {
        var loads = Readouts.Settled(50);
        loads.Target = null;
        Assert.Equal(Aim.Unknown, loads.Aim);
    }
}
