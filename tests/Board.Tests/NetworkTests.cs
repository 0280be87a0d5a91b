using System.Net;
using Board.Tests.Pages;

namespace Board.Tests;

/// <summary>The way between browser and daemon: cut, joined again, and asked for under strange names.</summary>
[Collection(SharedBayTests.Name)]
public class NetworkTests(SharedBay bay)
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

    [Theory]
    [InlineData("stranger.example", HttpStatusCode.MisdirectedRequest)]
    [InlineData("127.0.0.1", HttpStatusCode.OK)]
    [InlineData("localhost", HttpStatusCode.OK)]
    public async Task The_page_and_its_calls_are_answered_only_under_names_of_this_bay(string host, HttpStatusCode status)
    {
        using var client = new HttpClient();
        foreach (var path in new[] { "", "health", "scalelink.v1.Feed/GetClock" })
        {
            using var request = new HttpRequestMessage(path.Contains('.') ? HttpMethod.Post : HttpMethod.Get, $"http://127.0.0.1:{bay.Rig.PagePort}/{path}");
            request.Headers.Host = host;
            if (path.Contains('.'))
                request.Content = new ByteArrayContent([0, 0, 0, 0, 0]) { Headers = { ContentType = new("application/grpc-web+proto") } };
            using var response = await client.SendAsync(request, TestContext.Current.CancellationToken);
            Assert.Equal(status, response.StatusCode);
            if (status != HttpStatusCode.OK)
                Assert.Contains("SL-417", await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        }
    }

    [Fact]
    public async Task Every_page_of_a_bay_that_lets_other_machines_in_says_so()
    {
        var closed = await File.ReadAllTextAsync(bay.Rig.BayFile, TestContext.Current.CancellationToken);
        var board = await bay.Show();
        Assert.Equal(0, await board.Page.Locator(".open-bay").CountAsync());
        await Restart(closed.Replace("[listen]", "[listen]\nother_machines = true"));
        foreach (var path in Views.All)
        {
            await board.Go(path);
            Assert.Contains("open to other machines, without rights or encryption", await board.Text(".open-bay"));
        }

        await Restart(closed);
        await board.Until("!document.querySelector('.open-bay')", 10);
        await board.Go("");
    }

    private async Task Restart(string text)
    {
        await File.WriteAllTextAsync(bay.Rig.BayFile, text, TestContext.Current.CancellationToken);
        bay.Rig.Daemon.Process.Kill();
        bay.Rig.RestartDaemon();
        bay.Rig.Settled();
    }
}
