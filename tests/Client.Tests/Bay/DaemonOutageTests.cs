using System.Diagnostics;
using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Demo;

namespace Client.Tests.Bay;

[Trait("needs", "bay")]
public class DaemonOutageTests
{
    public static bool Can => RealBay.HasPseudoTerminals;

    [Fact(Skip = RealBay.WhyNot, SkipUnless = nameof(Can))]
    public async Task A_feed_outlives_the_daemon_holds_its_last_value_and_recovers_with_the_next_run()
    {
        var stop = TestContext.Current.CancellationToken;
        await using var bay = await DemoBay.Start(new DemoSetup { Ports = new Ports(0, 0, 0), Seed = 3 }, TimeProvider.System, stop);
        await using var views = new LoadsFeed(bay.Daemon).GetAsyncEnumerator(stop);
        var first = await Until(views, v => v.Freshness == Freshness.Live);

        Process.GetProcessById(bay.ProcessIds[1]).Kill();
        var held = await Until(views, v => v.Freshness == Freshness.Held);
        Assert.True(held.Age?.TotalMilliseconds > held.Message!.Stamp.MaxAgeMs);
        Assert.Equal("SL-420", (await Until(views, v => v.Trouble is not null)).Trouble!.Code);

        await using var next = ChildProgram.Start("daemon", Programs.Daemon, ["--bay", Path.Combine(bay.Folder, "bay.toml")], TimeProvider.System);
        var again = await Until(views, v => v is { Freshness: Freshness.Live, Trouble: null });
        Assert.NotEqual(first.Message!.Stamp.StartId, again.Message!.Stamp.StartId);
    }

    private static async Task<Judged<Loads>> Until(IAsyncEnumerator<Judged<Loads>> views, Func<Judged<Loads>, bool> wanted)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(90));
        while (await views.MoveNextAsync().AsTask().WaitAsync(patience.Token))
            if (wanted(views.Current))
                return views.Current;
        throw new InvalidOperationException("A feed never ends by itself.");
    }
}
