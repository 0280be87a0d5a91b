using System.Diagnostics;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Timing.Tests.FaultMatrix;

/// <summary>
/// Every fault against pads of every protocol at once: named within its stated time, the other pads undisturbed, nothing wrong published,
/// and everything back afterwards. Limits: the project's own requirement.
/// </summary>
[Trait("needs", "bay")]
[Collection(Alone.Name)]
public class FaultMatrixTests(MatrixBay bay, ITestOutputHelper output) : IClassFixture<MatrixBay>
{
    // What a busy machine may add to a stated time.
    private static readonly TimeSpan Slack = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan Recovery = TimeSpan.FromSeconds(20);
    private static readonly TimeSpan Lasting = TimeSpan.FromMilliseconds(700);

    private const long EchoNs = 1_500_000_000;

    // A pad with a longer hole in its samples has been disturbed. Straight lines bridge 250 ms, and the tests in virtual time hold slaves of one
    // line to less; here a busy machine may add its own.
    private const double LongestGapMs = 500;

    public static TheoryData<string> Names => [.. FaultList.Tried.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_fault_is_named_disturbs_nobody_else_publishes_nothing_wrong_and_is_recovered_from(string name)
    {
        var fault = FaultList.Tried[name];
        bay.UntilHealthy(Recovery);
        var from = Undisturbed(fault).ToDictionary(corner => corner, bay.Samples.NewestNs);
        var begun = Stopwatch.GetTimestamp();
        bay.Do(fault.BeginCommands);
        foreach (var (corner, codes) in fault.Named)
        {
            bay.UntilNamed(corner, codes, TimeSpan.FromSeconds(fault.Within) + Slack);
            output.WriteLine($"{name}: {corner} named within {Stopwatch.GetElapsedTime(begun).TotalMilliseconds:0} ms");
        }

        Thread.Sleep(Lasting);
        bay.Do(fault.EndCommands);
        var ended = Stopwatch.GetTimestamp();
        bay.UntilHealthy(Recovery);
        output.WriteLine($"{name}: healthy within {Stopwatch.GetElapsedTime(ended).TotalMilliseconds:0} ms");
        foreach (var (corner, since) in from)
            Assert.InRange(bay.Samples.LongestGapMs(corner, since), 0, LongestGapMs);
        bay.AssertNothingWrong();
    }

    // Samples that come twice are dropped and counted: nobody has to do anything about them.
    [Fact]
    public void Samples_that_come_twice_are_counted_and_used_once()
    {
        bay.UntilHealthy(Recovery);
        var before = bay.Pad(Corner.Lf).Counters.RepeatedSamples;
        var from = bay.Samples.NewestNs(Corner.Lf);
        bay.Do(["""{"do":"duplicate","corner":"LF","share":1}""", """{"do":"duplicate","corner":"LR","share":1}"""]);
        Wait.Until(() => bay.Pad(Corner.Lf).Counters.RepeatedSamples > before + 20, Wait.Patience, "counted");
        bay.Do(["""{"do":"duplicate","corner":"LF","share":0}""", """{"do":"duplicate","corner":"LR","share":0}"""]);
        var instants = bay.Samples.Of(Corner.Lf).Select(s => s.AtNs).Where(at => at >= from).ToList();
        Assert.Equal(instants.Count, instants.Distinct().Count());
        bay.UntilHealthy(Recovery);
        bay.AssertNothingWrong();
    }

    [Fact]
    public void An_adapter_that_hears_itself_disturbs_nothing()
    {
        bay.UntilHealthy(Recovery);
        var from = bay.Samples.NewestNs(Corner.Rf);
        bay.Do(["""{"do":"echo","on":true}"""]);
        Wait.Until(() => bay.Samples.NewestNs(Corner.Rf) > from + EchoNs, Recovery, "slaves are heard through the echo");
        Assert.All(new[] { Corner.Rf, Corner.Rr }, corner => Assert.InRange(bay.Samples.LongestGapMs(corner, from), 0, LongestGapMs));
        Assert.Empty(bay.Pad(Corner.Rf).Faults);
        bay.Do(["""{"do":"echo","on":false}"""]);
        bay.UntilHealthy(Recovery);
        bay.AssertNothingWrong();
    }

    private static IEnumerable<Corner> Undisturbed(Fault fault) =>
        new[] { Corner.Lf, Corner.Rf, Corner.Lr, Corner.Rr }.Except(fault.Named.Select(n => n.Corner));
}
