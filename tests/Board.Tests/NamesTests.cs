using System.Net;
using Board.Tests.Pages;

namespace Board.Tests;

/// <summary>Who is answered: names of this bay, and other machines where the bay file lets them in.</summary>
[Collection(CrewBayTests.Name)]
public class NamesTests(SharedBay bay)
{
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
        await board.Until("!document.querySelector('.open-bay')");
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
