using Board.Tests.Pages;

namespace Board.Tests;

/// <summary>The watch over the empty pads on the patch view. Limits of what is shown are common practice, no published source; of access axe-core's rules.</summary>
[Collection(CrewBayTests.Name)]
public class PaddockTests(SharedBay bay)
{
    [Fact]
    public async Task The_empty_pads_are_watched_and_the_outcome_stands_on_the_page_until_the_next()
    {
        var board = await bay.Show(new PageSetup { Path = "patch" });
        await board.Has("[data-paddock]");
        Assert.Equal("none", await board.Page.Locator("[data-paddock]").GetAttributeAsync("data-paddock"));
        Assert.False(await board.Page.EvaluateAsync<bool>("document.querySelector('[data-paddock]').open"));
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        await board.Page.Locator(".paddock summary").PressAsync("Enter");
        await Start(board);
        await board.Has(".paddock .refusal");
        Assert.Contains("SL-589", await board.Text(".paddock .refusal"));

        bay.Rig.Simulator.DoAndWait("""{"do":"jack","corners":["LF","RF","LR","RR"],"mm":150}""");
        bay.Rig.Zero();
        await Start(board);
        await board.Has("[data-paddock=watching] progress");
        await board.Has("[data-paddock-verdict]");
        Assert.Equal(7, await board.Page.Locator("[data-part]").CountAsync());
        // Nobody has surveyed the pads: a single reading is not claimed, however short the watch.
        Assert.StartsWith("So far: ", await board.Text("[data-paddock-verdict]"), StringComparison.Ordinal);
        Assert.Contains("not known in a reading, nothing in a change", await board.Text("[data-part=warp]"));
        await board.Page.Locator("[data-do=stop-paddock]:not([disabled])").ClickAsync();
        await board.Has("[data-paddock=ended]");
        Assert.Contains("SL-587", await board.Text(".paddock .findings"));
        Assert.Contains("RF drifts", (await board.Text("[data-paddock-pad=RF]")).ReplaceLineEndings(" "));
        await Look.AtAllSizes(board, "patch-paddock");
        await Look.AxeFindsNothing(board);

        // As everybody wants to find it.
        bay.Rig.Simulator.DoAndWait("""{"do":"lower"}""");
        bay.Rig.Simulator.DoAndWait("""{"do":"settle","seconds":2}""");
        bay.Rig.Settled();
        await board.Go("device");
        await board.Go("patch");
        await board.Has("[data-paddock=ended]");
        Assert.True(await board.Page.EvaluateAsync<bool>("document.querySelector('[data-paddock]').open"));
        Assert.Empty(board.Errors);
    }

    private static async Task Start(BoardPage board)
    {
        await board.Page.Locator("[name=paddock-minutes]").FillAsync("2");
        await board.Page.Locator("[data-do=start-paddock]:not([disabled])").ClickAsync();
    }
}
