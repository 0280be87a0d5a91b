using System.Diagnostics;
using Board.Tests.Pages;
using Shared;
using Shared.Rig;

namespace Board.Tests;

/// <summary>
/// The page and the daemon as they are published: trimmed, compressed, Release. What trimming takes away too much shows only here, and
/// what the page costs is measured here. Limits: the project's own requirements; no published source.
/// </summary>
[Collection(AloneTests.Name)]
public class PublishedTests(AloneBay bay, ITestOutputHelper output)
{
    private const double MostMegabytes = 3.5;
    private const double MostSecondsToFirstView = 3;
    // Until the page's own code answers to a press. Our own limit: it holds on a workshop's small machine what the first view need not wait for.
    private const double MostSecondsToPress = 6;
    private const double MostOfACoreInThePage = 0.3;
    private const double MostOfACoreInTheDaemon = 0.25;
    private const int Pages = 25;
    private const int Visits = 5;

    [Fact]
    public async Task The_published_page_opens_shows_every_view_and_keeps_to_its_budgets()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("SCALELINK_LONG") == "1", "Publishing takes minutes: set SCALELINK_LONG=1.");
        var folder = Directory.CreateTempSubdirectory("scalelink-published-");
        try
        {
            Publish(folder.FullName);
            bay.Rig.Daemon.Process.Kill();
            using var daemon = new ChildProcess("published", Path.Combine(folder.FullName, "scalelinkd.dll"), "--bay", bay.Rig.BayFile, "--exit-with-stdin");
            Wait.Until(() => bay.Rig.Daemon.Loads()?.WeighingReady == true, TimeSpan.FromSeconds(60), "the published daemon settled");
            // Every figure is told before any is judged.
            var one = await OnePage(daemon);
            var many = await ManyPages(daemon);
            Assert.InRange(one.Megabytes, 0.5, MostMegabytes);
            Assert.InRange(one.FirstView, 0, MostSecondsToFirstView);
            Assert.InRange(one.Press, 0, MostSecondsToPress);
            Assert.InRange(one.Busy, 0.001, MostOfACoreInThePage);
            Assert.InRange(many, 0, MostOfACoreInTheDaemon);
        }
        finally
        {
            bay.Rig.RestartDaemon();
            folder.Delete(recursive: true);
            bay.Rig.Settled();
        }
    }

    private async Task<(double Megabytes, double FirstView, double Press, double Busy)> OnePage(ChildProcess daemon)
    {
        // The daemon has just started: nobody waits for that.
        await FirstView();
        List<double[]> views = [];
        for (var k = 0; k < Visits; k++)
            views.Add(await FirstView());
        var (first, press) = (Middle(views.Select(v => v[0])), Middle(views.Select(v => v[1])));
        await using var board = await bay.Open();
        await board.UntilVerdict("settled");
        var bytes = await board.Page.EvaluateAsync<double>("performance.getEntriesByType('navigation').concat(performance.getEntriesByType('resource')).reduce((sum, r) => sum + r.transferSize, 0)");
        var (page, _) = await Busy(daemon, TimeSpan.FromSeconds(20));
        output.WriteLine($"cold cache: {bytes / 1e6:0.00} MB over the wire; live, and answering to a press, after {string.Join(", ", views.Select(v => $"{v[0]:0.0} and {v[1]:0.0}"))} s; then {page:0.0 %} of a core in the page");
        foreach (var path in Views.All)
        {
            await board.Go(path);
            await board.Page.EvaluateAsync(Sight.Unfold);
        }

        await TypeADifference(board);
        Assert.Empty(board.Errors);
        return (bytes / 1e6, first, press, page);
    }

    // From the click to live loads, and to those of the page's own code, s, as the page itself sees them come; each in a browser context of its own, whose cache is cold.
    private async Task<double[]> FirstView()
    {
        await using var board = await bay.Open(prepare: page => page.AddInitScriptAsync(Sight.WatchForLive));
        await board.UntilVerdict("settled");
        return [.. (await board.Page.EvaluateAsync<double[]>(Sight.FirstLive)).Select(ms => ms / 1000)];
    }

    private static double Middle(IEnumerable<double> values) => values.Order().ElementAt(Visits / 2);

    // What the pages cost the daemon, in shares of a core. As many are real as the cores can draw; the others open the stream that a page opens and draw nothing.
    private async Task<double> ManyPages(ChildProcess daemon)
    {
        var (_, without) = await Busy(daemon, TimeSpan.FromSeconds(20));
        List<BoardPage> boards = [];
        try
        {
            while (boards.Count < Math.Min(Pages, 3 * Environment.ProcessorCount))
                boards.Add(await bay.Open());
            await using var streams = new PageStreams(bay.Rig.PagePort, Pages - boards.Count);
            await streams.Begun();
            foreach (var board in boards)
                await board.UntilFreshness("live", 60);
            var before = streams.Updates;
            var (_, with) = await Busy(daemon, TimeSpan.FromSeconds(20));
            var updates = (streams.Updates - before) / 20.0 / (Pages - boards.Count);
            output.WriteLine($"the daemon: {without:0.0 %} of a core without a page, {with:0.0 %} with {boards.Count} pages and {Pages - boards.Count} streams as pages open them, {updates:0.0} updates a second each; load {File.ReadAllText("/proc/loadavg").Split(' ')[0]}");
            return with - without;
        }
        finally
        {
            foreach (var board in boards)
                await board.DisposeAsync();
        }
    }

    // Shares of a core over the span: of the browser's pages, and of the daemon.
    private async Task<(double Page, double Daemon)> Busy(ChildProcess daemon, TimeSpan span)
    {
        using var process = Process.GetProcessById(daemon.Id);
        var (start, page, own) = (Stopwatch.GetTimestamp(), await bay.RendererSeconds(), process.TotalProcessorTime);
        await Task.Delay(span, TestContext.Current.CancellationToken);
        process.Refresh();
        var seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        return ((await bay.RendererSeconds() - page) / seconds, (process.TotalProcessorTime - own).TotalSeconds / seconds);
    }

    // What is typed and chosen goes through converters that trimming may take away.
    private static async Task TypeADifference(BoardPage board)
    {
        await board.Go("patch");
        await board.Page.Locator("[name=height-measurement-by][value=differences]").CheckAsync();
        await board.Page.Locator("[name=to-0]").SelectOptionAsync("RR");
        await board.Page.Locator("[name=way-0]").SelectOptionAsync("beam with inclinometer");
        await board.Page.Locator("[name=reading-0]").FillAsync("0.1");
        await board.Until("document.querySelector('[data-value=lacking]').innerText.includes('LF to RR: the distance between the feet')", 10);
    }

    private static void Publish(string folder)
    {
        var start = new ProcessStartInfo("dotnet") { UseShellExecute = false, RedirectStandardOutput = true };
        foreach (var argument in new[] { "publish", RepositoryRoot.File("src", "Daemon"), "-c", "Release", "-o", folder, "-m:1", "-p:RunAnalyzers=false" })
            start.ArgumentList.Add(argument);
        using var publish = Process.Start(start)!;
        var said = publish.StandardOutput.ReadToEnd();
        publish.WaitForExit();
        Assert.True(publish.ExitCode == 0, said);
    }
}
