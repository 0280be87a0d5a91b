using System.Diagnostics;
using Board.Tests.Pages;
using Shared;
using Shared.Rig;

namespace Board.Tests;

/// <summary>The page as it is published: trimmed and compressed. What trimming takes away too much shows only here.</summary>
[Collection(SharedBayTests.Name)]
public class PublishedTests(SharedBay bay)
{
    // The project's own requirement; no published source.
    private const double MostMegabytes = 3.5;

    [Fact]
    public async Task The_published_page_opens_and_shows_every_view()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("SCALELINK_LONG") == "1", "Publishing takes minutes: set SCALELINK_LONG=1.");
        var folder = Directory.CreateTempSubdirectory("scalelink-published-");
        try
        {
            Publish(folder.FullName);
            bay.Rig.Daemon.Process.Kill();
            using (var daemon = new ChildProcess("published", Path.Combine(folder.FullName, "scalelinkd.dll"), "--bay", bay.Rig.BayFile, "--exit-with-stdin"))
                await Open();
        }
        finally
        {
            bay.Rig.RestartDaemon();
            folder.Delete(recursive: true);
            bay.Rig.Settled();
        }
    }

    private async Task Open()
    {
        Wait.Until(() => bay.Rig.Daemon.Loads()?.CaptureReady == true, TimeSpan.FromSeconds(60), "the published daemon settled");
        await using var board = await bay.Open();
        await board.UntilVerdict("settled");
        var bytes = await board.Page.EvaluateAsync<double>("performance.getEntriesByType('resource').reduce((sum, r) => sum + r.transferSize, 0)");
        TestContext.Current.TestOutputHelper!.WriteLine($"{bytes / 1e6:0.00} MB over the wire");
        Assert.InRange(bytes / 1e6, 0.5, MostMegabytes);
        foreach (var path in Views.All)
        {
            await board.Go(path);
            await board.Page.EvaluateAsync(Sight.Unfold);
        }

        await TypeADifference(board);
        Assert.Empty(board.Errors);
    }

    // What is typed and chosen goes through converters that trimming may take away.
    private static async Task TypeADifference(BoardPage board)
    {
        await board.Go("patch");
        await board.Page.Locator("[name=survey-by][value=differences]").CheckAsync();
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
