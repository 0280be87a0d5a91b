using ScaleLink.Api.V1;
using ScaleLink.Client.Doctor;

namespace Client.Tests.Doctor;

/// <summary>What the doctor makes of a diagnosis. Limits: common practice, no published source.</summary>
public class PadChecksTests
{
    private const double ToleranceKg = 0.1;

    [Fact]
    public void A_sound_pad_passes() => Assert.All(PadChecks.Of(Sound(), ToleranceKg), f => Assert.True(f.Outcome == Outcome.Pass, $"{f}"));

    public static TheoryData<string, string> Faults => new()
    {
        { "rate", "SL-458" }, { "gaps", "SL-459" }, { "long gap", "SL-459" }, { "unsound", "SL-460" }, { "frozen", "SL-461" }, { "noise", "SL-462" },
    };

    [Theory]
    [MemberData(nameof(Faults))]
    public void Each_fault_fails_its_own_check_and_no_other(string what, string code)
    {
        var diagnosis = Sound();
        switch (what)
        {
            case "rate": diagnosis.MeasuredRateHz = 77; break;
            case "gaps": diagnosis.MissedSamples = 1; break;
            case "long gap": diagnosis.LongestGapMs = 251; break;
            case "unsound": diagnosis.UnsoundSamples = 3; break;
            case "frozen": (diagnosis.Frozen, diagnosis.FreezeWatch) = (true, FreezeWatch.ByNoise); break;
            default: diagnosis.NoiseKg = 0.46; break;
        }

        var failed = Assert.Single(PadChecks.Of(diagnosis, ToleranceKg), f => f.Outcome == Outcome.Fail);
        Assert.Equal(code, failed.Wrong!.Code);
        Assert.NotEmpty(failed.Wrong!.Remedy.ToString());
    }

    // A filtered indicator of a coarse division gives one number for hours.
    [Theory]
    [InlineData(FreezeWatch.BySiblings)]
    [InlineData(FreezeWatch.None)]
    public void Counts_that_may_rightly_be_the_same_are_no_fault(FreezeWatch watch)
    {
        var diagnosis = Sound();
        (diagnosis.Frozen, diagnosis.FreezeWatch) = (true, watch);
        Assert.DoesNotContain(PadChecks.Of(diagnosis, ToleranceKg), c => c.Outcome == Outcome.Fail);
        Assert.Contains("step onto the pad", Assert.Single(PadChecks.Of(diagnosis, ToleranceKg), c => c.Outcome == Outcome.LeftOut).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_line_of_the_mains_is_named_beside_the_noise()
    {
        var diagnosis = Sound();
        diagnosis.Lines.Add(new SpectralLine { Hz = 50, AmplitudeKg = 0.08 });
        Assert.Contains("0.080 kg at 50.0 Hz", Assert.Single(PadChecks.Of(diagnosis, ToleranceKg), f => f.Check == "noise").Message);
    }

    [Fact]
    public void What_cannot_be_told_is_left_out()
    {
        Assert.Equal(Outcome.LeftOut, Assert.Single(PadChecks.Of(new PadDiagnosis { Corner = Corner.Lf }, ToleranceKg)).Outcome);
        var diagnosis = Sound();
        diagnosis.ClearNoiseKg();
        Assert.Equal(Outcome.LeftOut, Assert.Single(PadChecks.Of(diagnosis, ToleranceKg), f => f.Check == "noise").Outcome);
    }

    private static PadDiagnosis Sound() => new()
    {
        Corner = Corner.Lf, Samples = 400, StatedRateHz = 80, MeasuredRateHz = 80.3, LongestGapMs = 19, NoiseKg = 0.1,
    };
}
