using Board.Tests.Pages;
using ScaleLink.Api.V1;

namespace Board.Tests.PadInterchange;

/// <summary>
/// The pads interchanged under one car by clicks on the view that calibrates pads. Limits of what is shown are common practice, no published
/// source; of access axe-core's rules; the truth is how the simulator makes its pads.
/// </summary>
[Collection(CrewBayTests.Name)]
public sealed class PadInterchangeTests(SharedBay bay) : IAsyncDisposable
{
    private bool _isBegun;

    private PadInterchangeControl.PadInterchangeControlClient Control => new(bay.Rig.Daemon.Channel);

    [Fact]
    public async Task The_car_is_weighed_the_weighing_thrown_away_and_taken_by_somebody_else_and_the_round_given_up()
    {
        var board = await Open();
        Assert.False(await IsOpen(board));
        await board.Page.Locator(".interchange summary").First.PressAsync("Enter");
        await Record(board, 1);
        await board.Has(".placement[data-ready=no]");
        Assert.Contains("carry the pads: RF to LF, LR to RF, RR to LR, LF to RR.", await board.Text("[data-value=interchange-do]"));
        Assert.Contains("axle stands", await board.Text(".placement .caution"));
        Assert.Contains("SL-322", await board.Text(".placement .ready"));
        await Look.AtAllSizes(board, "interchange");
        await Look.AxeFindsNothing(board);

        await board.Page.Locator("[data-placement='1'] [data-do=ask-throw-away]").ClickAsync();
        Assert.Contains("Placement 1", await board.Text(".placements .confirm"));
        await board.Page.Locator("[data-do=throw-away]").ClickAsync();
        await board.Has("[data-placements='0']");
        // Somebody else weighs it again; this page follows.
        Control.RecordPlacement(new RecordPlacementRequest { Who = "Bo" });
        await board.Has("[data-placements='1']");

        // Why is for the record: no reason, no end.
        Assert.Equal(1, await board.Page.Locator("[data-do=abandon-interchange][disabled]").CountAsync());
        await board.Page.Locator("[name=interchange-note]").FillAsync("pads are wanted elsewhere");
        await board.Page.Locator("[data-do=abandon-interchange]:not([disabled])").ClickAsync();
        await board.Has("[data-interchange=abandoned] [data-value=interchange-ending]");
        Assert.Contains("by Ada: pads are wanted elsewhere", await board.Text("[data-value=interchange-ending]"));
        Assert.True(await IsOpen(board));
        // The car still stands there at rest: another one could begin.
        await board.Has("[data-do=record-placement]:not([disabled])");
        Assert.Equal(4, (await Saved(board, "save-interchange-csv")).Split('\n').Count(l => l.StartsWith("1,", StringComparison.Ordinal)));
        await board.Go("device");
        await board.Go("calibration");
        await board.Has("[data-interchange=abandoned]");
        Assert.False(await IsOpen(board));
        Assert.Empty(board.Errors);
    }

    [Fact]
    public async Task On_pads_carried_round_over_restarts_four_placements_come_to_a_verdict_on_each_pad()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("SCALELINK_LONG") == "1", "Four settles in real time take more than a minute: set SCALELINK_LONG=1.");
        var board = await Open();
        if (!await IsOpen(board))
            await board.Page.Locator(".interchange summary").First.PressAsync("Enter");
        await Record(board, 1);
        for (var placement = 2; placement <= 4; placement++)
        {
            await Move(board);
            Assert.Contains("The pads stand where they have to", await board.Text("[data-value=interchange-do]"));
            await Weigh(board, placement);
        }

        await board.Has("[data-interchange=review] .departures");
        Assert.Equal(4, await board.Page.Locator("[data-departure]").CountAsync());
        await Look.AtAllSizes(board, "interchange-review");
        await Look.AxeFindsNothing(board);
        await board.Page.Locator("[name=interchange-note]").FillAsync("after the trip");
        await board.Page.Locator("[data-do=finish-interchange]:not([disabled])").ClickAsync();
        await board.Has("[data-interchange=finished] [data-value=interchange-ending]");
        await Look.AtAllSizes(board, "interchange-finished");
        Assert.Contains("no departure seen", await Saved(board, "save-interchange"));
        Assert.Empty(board.Errors);
    }

    /// <summary>As the other tests want the bay: the pads in their first places and zeroed, the car settled on them.</summary>
    public ValueTask DisposeAsync()
    {
        if (!_isBegun)
            return ValueTask.CompletedTask;
        if (new PadInterchanges.PadInterchangesClient(bay.Rig.Daemon.Channel).GetInterchange(new GetInterchangeRequest()).State is InterchangeState.Measuring or InterchangeState.Review)
            Control.AbandonInterchange(new AbandonInterchangeRequest { Who = "Ada", Reason = "the test failed" });
        if (bay.Rig.PlacesMoved > 0)
        {
            Jack();
            bay.Rig.MovePads(4 - bay.Rig.PlacesMoved);
            bay.Rig.Zero();
            Lower();
        }

        bay.Rig.Settled();
        return ValueTask.CompletedTask;
    }

    private async Task<BoardPage> Open()
    {
        _isBegun = true;
        var board = await bay.Show(new PageSetup { Path = "device" });
        await board.Go("calibration");
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        await board.Page.Locator(".interchange[data-placements]").WaitForAsync();
        return board;
    }

    // The daemon starts again with a bay file that follows the pads: the page says that it is away, and goes on where it stood.
    private async Task Move(BoardPage board)
    {
        Jack();
        bay.Rig.Daemon.Process.Kill();
        try
        {
            await board.Has(".interchange .held-note");
            Assert.Equal(1, await board.Page.Locator("[data-do=record-placement][disabled]").CountAsync());
        }
        finally
        {
            bay.Rig.MovePads(1);
        }

        await board.Until("document.querySelectorAll('[data-there=yes]').length === 4 && !document.querySelector('.interchange .held-note')");
    }

    private async Task Weigh(BoardPage board, int number)
    {
        // Pads that were carried a moment ago may not be quiet yet: asked again as people do.
        for (var tries = 1; tries <= 20 && await board.Page.Locator(".interchange .results .taken").CountAsync() < 4; tries++)
        {
            await board.Page.Locator(".interchange [data-do=ask-zero]:not([disabled])").ClickAsync();
            await board.Page.Locator(".interchange [data-do=take-zero]:not([disabled])").ClickAsync();
            await board.Has(".interchange [data-do=ask-zero]:not([disabled])");
            await board.Has(".interchange .results li");
            if (tries > 1)
                await Task.Delay(500, TestContext.Current.CancellationToken);
        }

        Lower();
        await Record(board, number);
    }

    // The noise of a moment can refuse a reading that the page had just offered: asked again as people do.
    private static async Task Record(BoardPage board, int number)
    {
        var done = $"document.querySelector('.interchange').dataset.placements === '{number}'";
        for (var tries = 1; ; tries++)
        {
            await board.Has("[data-do=record-placement]:not([disabled])");
            await board.Page.Locator("[data-do=record-placement]:not([disabled])").ClickAsync();
            await board.Until($"{done} || document.querySelector('.interchange .trouble-note .refusal')");
            if (tries == 5 || await board.Page.EvaluateAsync<bool>(done))
                break;
            await Task.Delay(500, TestContext.Current.CancellationToken);
        }

        await board.Until(done);
    }

    private static async Task<string> Saved(BoardPage board, string button)
    {
        var download = await board.Page.RunAndWaitForDownloadAsync(() => board.Page.Locator($"[data-do={button}]").ClickAsync());
        return await File.ReadAllTextAsync((await download.PathAsync())!, TestContext.Current.CancellationToken);
    }

    private static Task<bool> IsOpen(BoardPage board) => board.Page.EvaluateAsync<bool>("document.querySelector('.interchange').open");

    private void Jack() => bay.Rig.Simulator.DoAndWait("""{"do":"jack","mm":150}""");

    private void Lower()
    {
        bay.Rig.Simulator.DoAndWait("""{"do":"lower"}""");
        bay.Rig.Simulator.DoAndWait("""{"do":"settle","seconds":2}""");
    }
}
