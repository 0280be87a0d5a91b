using System.Globalization;
using System.Text.RegularExpressions;
using Board.Tests.Pages;

namespace Board.Tests.SiteCheck;

/// <summary>The site check on the patch view. Limits of what is shown are common practice, no published source; of access axe-core's rules.</summary>
[Collection(CrewBayTests.Name)]
public partial class SiteCheckTests(SharedBay bay)
{
    [Fact]
    public async Task The_empty_pads_are_watched_and_the_outcome_stands_on_the_page_until_the_next()
    {
        var board = await bay.Show(new PageSetup { Path = "patch" });
        await board.Has("[data-site-check]");
        Assert.Equal("none", await board.Page.Locator("[data-site-check]").GetAttributeAsync("data-site-check"));
        Assert.False(await board.Page.EvaluateAsync<bool>("document.querySelector('[data-site-check]').open"));
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        await board.Page.Locator(".site-check summary").PressAsync("Enter");
        await Start(board);
        await board.Has(".site-check .refusal");
        Assert.Contains("SL-589", await board.Text(".site-check .refusal"));

        bay.Rig.Simulator.DoAndWait("""{"do":"jack","corners":["LF","RF","LR","RR"],"mm":150}""");
        bay.Rig.Zero();
        await Start(board);
        await board.Has("[data-site-check=watching] progress");
        await board.Has("[data-site-check-verdict]");
        Assert.Equal(7, await board.Page.Locator("[data-part]").CountAsync());
        // Nobody has measured the pads: a single reading is not claimed, however short the watch.
        Assert.StartsWith("So far: ", await board.Text("[data-site-check-verdict]"), StringComparison.Ordinal);
        Assert.Contains("not known in a reading, nothing in a change", await board.Text("[data-part=warp]"));
        await board.Page.Locator("[data-do=stop-site-check]:not([disabled])").ClickAsync();
        await board.Has("[data-site-check=ended]");
        Assert.Contains("SL-587", await board.Text(".site-check .findings"));
        Assert.Contains("RF drifts", (await board.Text("[data-site-check-pad=RF]")).ReplaceLineEndings(" "));
        await Look.AtAllSizes(board, "patch-site-check");
        await Look.AxeFindsNothing(board);

        // As everybody wants to find it.
        bay.Rig.Simulator.DoAndWait("""{"do":"lower"}""");
        bay.Rig.Simulator.DoAndWait("""{"do":"settle","seconds":2}""");
        bay.Rig.Settled();
        await board.Go("device");
        await board.Go("patch");
        await board.Has("[data-site-check=ended]");
        Assert.True(await board.Page.EvaluateAsync<bool>("document.querySelector('[data-site-check]').open"));
        Assert.Empty(board.Errors);
    }

    [Fact]
    public async Task What_the_daemon_says_of_a_refused_call_stands_in_the_pounds_of_this_device()
    {
        bay.Rig.Settled();
        var board = await bay.Show(new PageSetup { Path = "device" });
        await board.Page.Locator("input[name=unit][value=lb]").CheckAsync();
        await board.Go("patch");
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        if (!await board.Page.EvaluateAsync<bool>("document.querySelector('[data-site-check]').open"))
            await board.Page.Locator(".site-check summary").PressAsync("Enter");
        await Start(board);
        await board.Has(".site-check .refusal");
        var said = await board.Text(".site-check .refusal");
        Assert.DoesNotContain("kg", said);
        var pounds = LoadsInPounds().Matches(said).Select(m => double.Parse(m.Groups[1].ValueSpan, CultureInfo.InvariantCulture)).ToList();
        Assert.Equal(4, pounds.Count);
        // 1 lb = 0.453 592 37 kg exactly (NIST Special Publication 811:2008, appendix B.8).
        Assert.Equal(bay.Rig.Settled().TotalKg.Estimate, pounds.Sum() * 0.45359237, 0.5);
        await board.Go("device");
        await board.Page.Locator("input[name=unit][value=kg]").CheckAsync();
        Assert.Empty(board.Errors);
    }

    [GeneratedRegex(@"(?:LF|RF|LR|RR) reads \+(\d+\.\d) lb\.")]
    private static partial Regex LoadsInPounds();

    private static async Task Start(BoardPage board)
    {
        await board.Page.Locator("[name=site-check-minutes]").FillAsync("2");
        await board.Page.Locator("[data-do=start-site-check]:not([disabled])").ClickAsync();
    }
}
