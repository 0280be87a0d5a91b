using ScaleLink.Weighing.Settling;
using Weighing.Tests.Settling.Scenarios;

namespace Weighing.Tests.Settling;

/// <summary>A settled car that is touched, shaken or walked past. Limits are this project's own targets; no published source.</summary>
public class DisturbanceTests
{
    [Fact]
    public void A_hand_on_a_settled_car_takes_settled_back_within_a_seventh_of_a_second()
    {
        var runs = Scenario.HandOnWheels.Each(55, 40, HandOutcome.Of);
        Assert.All(runs, run => Assert.True(run.WasSettled));
        Assert.All(runs, run => Assert.True(run.RetractedAfter <= .15, $"{run.RetractedAfter} s"));
    }

    [Theory]
    [InlineData("linear")]
    [InlineData("workshop")]
    [InlineData("friction")]
    public void The_verdict_does_not_flicker(string name)
    {
        foreach (var run in SharedRuns.In(name))
        {
            var stretches = run.Stretches().ToArray();
            foreach (var (verdict, seconds) in stretches)
                if (verdict is SettlingVerdict.Disturbed) Assert.True(seconds >= .5, $"{verdict} for {seconds} s");
                else if (verdict is SettlingVerdict.Moving) Assert.True(seconds >= .2, $"{verdict} for {seconds} s");
            for (var i = 0; i + 2 < stretches.Length; i++)
                if (stretches[i].Verdict == stretches[i + 2].Verdict)
                    Assert.True(stretches[i + 1].Seconds + stretches[i + 2].Seconds >= .5, $"{name}: back and forth at stretch {i}");
        }
    }

    [Fact]
    public void A_car_that_never_rests_is_never_settled_and_its_wide_interval_holds()
    {
        int covered = 0, stated = 0;
        foreach (var run in Scenario.Shaken.Each(9004, 20, record => new SettlingTrial(record)))
            for (var k = 0; k < run.Readings.Length; k++)
            {
                if (RockingRecord.Time(k) < 1) continue;
                Assert.NotEqual(SettlingVerdict.Settled, run.Readings[k].Verdict);
                if (!run.Readings[k].Fallback) continue;
                var (c, s) = run.Covered(k);
                (covered, stated) = (covered + c, stated + s);
            }
        Assert.True(stated > 200 && covered >= .93 * stated, $"{covered} of {stated}");
    }
}
