using Shared.Rig;
using Board.Tests.Pages;

namespace Board.Tests;

/// <summary>The way between browser and daemon: cut and joined again.</summary>
[Collection(AloneTests.Name)]
public class NetworkTests(AloneBay bay)
{
    private static readonly TimeSpan Outage = TimeSpan.FromSeconds(30);
    private const string NothingLive = "document.querySelector('[data-freshness]').dataset.freshness !== 'live' && document.querySelector('[data-verdict]').dataset.verdict === ''";

    [Fact]
    public async Task A_network_that_is_away_for_30_seconds_is_told_at_once_and_the_page_comes_back_by_itself_within_5()
    {
        await using var relay = new Relay(bay.Rig.PagePort);
        await using var board = await bay.Open(port: relay.Port);
        await board.UntilVerdict("settled");

        relay.Cut();
        var told = await board.UntilFreshness("held", 5);
        // A reading is permitted to be 250 ms old at ten a second, and the page looks four times a second.
        Assert.InRange(told.TotalSeconds, 0, 1.5);
        await board.Page.EvaluateAsync($"window.wasLive = false; window.watch = setInterval(() => {{ window.wasLive ||= !({NothingLive}); }}, 50)");
        await Task.Delay(Outage, TestContext.Current.CancellationToken);
        Assert.False(await board.Page.EvaluateAsync<bool>("window.wasLive"));
        Assert.Contains("SL-42", await board.Text(".faults"));
        await board.Page.EvaluateAsync("clearInterval(window.watch)");

        relay.Join();
        var back = await board.UntilFreshness("live", 20);
        Assert.InRange(back.TotalSeconds, 0, 5);
        await board.UntilVerdict("settled");
        TestContext.Current.TestOutputHelper!.WriteLine($"held {told.TotalSeconds:0.00} s after the cut, live {back.TotalSeconds:0.00} s after the join");
    }
}
