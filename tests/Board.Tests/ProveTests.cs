using System.Globalization;
using Board.Tests.Pages;
using ScaleLink.Api.V1;

namespace Board.Tests;

/// <summary>A full calibration of one pad by clicks; the simulator lifts the masses that the page asks for.</summary>
[Collection(SharedBayTests.Name)]
public class ProveTests(SharedBay bay)
{
    [Fact]
    public async Task A_pad_is_proved_by_clicks_from_the_list_of_masses_to_the_report()
    {
        bay.Rig.Simulator.DoAndWait("""{"do":"jack","mm":150}""");
        var failure = await Record.ExceptionAsync(async () => await Prove(await bay.Show(new PageSetup { Path = "prove" })));
        // The other tests want the car on its pads whatever happened here.
        PutCarBack();
        Assert.True(failure is null, $"{failure}");
    }

    private async Task Prove(BoardPage board)
    {
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        await board.Page.Locator("[name=pad][value=LR]").CheckAsync();
        await board.Page.Locator("[name=pieces-0]").FillAsync("3");
        await board.Page.Locator("[name=kg-0]").FillAsync("50");
        await board.Page.Locator("[name=runs]").FillAsync("2");
        await board.Page.Locator("[name=preloads]").FillAsync("1");
        await board.Page.Locator("[data-do=start-proof]:not([disabled])").ClickAsync();
        await board.Has(".step");
        Assert.Contains("Caution", await board.Text(".step .caution"));
        await Look.AtAllSizes(board, "prove-step");
        await ReadAllPoints(board);

        Assert.Equal("good", await board.Page.Locator(".result").GetAttributeAsync("data-result"));
        Assert.InRange(await board.Page.Locator(".residuals .up, .residuals .down").CountAsync(), 6, 40);
        await Look.AtAllSizes(board, "prove-result");
        await board.Page.Locator("[data-do=adopt]:not([disabled])").ClickAsync();
        await board.Has("[data-value=ending]");
        Assert.Contains("Adopted by Ada", await board.Text("[data-value=ending]"));
        var download = await board.Page.RunAndWaitForDownloadAsync(() => board.Page.Locator("[data-do=save-report]").ClickAsync());
        Assert.Contains("<svg", await File.ReadAllTextAsync((await download.PathAsync())!, TestContext.Current.CancellationToken));
        Assert.True(bay.Rig.Daemon.Pad("LR").Proved);
        Assert.Empty(board.Errors);
    }

    private async Task ReadAllPoints(BoardPage board)
    {
        var refusals = 0;
        while (await board.Page.Locator(".step").CountAsync() > 0)
        {
            var step = board.Page.Locator(".step");
            var (number, load) = (await step.GetAttributeAsync("data-step"), await step.GetAttributeAsync("data-load"));
            // What stands in the way is told with its code while the mass is not there yet.
            refusals += (await board.Text(".step .ready")).Contains("(SL-3", StringComparison.Ordinal) ? 1 : 0;
            bay.Rig.Simulator.Do(FormattableString.Invariant($$"""{"do":"mass","corner":"LR","kg":{{double.Parse(load!, CultureInfo.InvariantCulture)}}}"""));
            await board.Has("[data-do=record]:not([disabled])", 30);
            await board.Page.Locator("[data-do=record]").ClickAsync();
            await board.Until($"document.querySelector('.step')?.dataset.step !== '{number}'", 20);
        }

        Assert.True(refusals > 0, "No step told what it waited for.");
    }

    private void PutCarBack()
    {
        bay.Rig.Simulator.Do("""{"do":"mass","corner":"LR","kg":0}""");
        ZeroPadsResponse? zeros = null;
        Shared.Rig.Wait.Until(() => (zeros = bay.Rig.Daemon.Control.ZeroPads(new ZeroPadsRequest { Who = "Ada" })).Results.All(r => r.Zero is not null), TimeSpan.FromSeconds(40), () => $"{zeros}");
        bay.Rig.Simulator.DoAndWait("""{"do":"lower"}""");
        bay.Rig.Simulator.DoAndWait("""{"do":"settle","seconds":2}""");
        bay.Rig.Settled();
    }
}
