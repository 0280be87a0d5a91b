using System.Globalization;
using Board.Tests.Pages;
using ScaleLink.Api.V1;

namespace Board.Tests.Levelling;

/// <summary>Differences between pads entered on the patch view: feeler, water level, a beam with an inclinometer.</summary>
[Collection(CrewBayTests.Name)]
public class HeightMeasurementTests(SharedBay bay)
{
    [Fact]
    public async Task Four_differences_round_the_patch_show_their_closure_error_and_a_contradiction_is_refused()
    {
        var board = await Differences();
        Assert.Contains("Needed still", await board.Text("[data-value=lacking]"));
        foreach (var (row, mm) in new[] { (0, "2.0"), (1, "-1.0"), (2, "0,5"), (3, "\u22121.1") })
            await board.Page.Locator($"[name=difference-{row}]").FillAsync(mm);
        await board.Page.Locator("[name=pad-uncertainty]").FillAsync("0.2");
        await board.Page.Locator("[data-do=check-height-measurement]:not([disabled])").ClickAsync();
        await board.Has(".height-measurement table");
        // By hand: once round comes to 0.4 mm where it should come to none; four alike share it, 0.1 mm each. Least squares, JCGM 102:2011 in its simplest case.
        Assert.StartsWith("Closure error 0.10 mm", await board.Text(".height-measurement [data-value=closure]"), StringComparison.Ordinal);
        // LF to RF is 2.0 - 0.1, and so on round; the mean of the four is taken out.
        Assert.Matches("^\u2212(0\\.9[5-9]|1\\.0[0-4]) mm ", await board.Text(".height-measurement [data-value=height-LF]"));
        Assert.Matches(@"^\+0\.(8[5-9]|9[0-4]) mm ", await board.Text(".height-measurement [data-value=height-RF]"));

        await board.Page.Locator("[name=difference-3]").FillAsync("3");
        Assert.Equal(0, await board.Page.Locator(".height-measurement table").CountAsync());
        await board.Page.Locator("[data-do=check-height-measurement]:not([disabled])").ClickAsync();
        await board.Has(".height-measurement .refusal");
        Assert.Contains("SL-521", await board.Text(".height-measurement .refusal"));
        Assert.Contains("do not close", await board.Text(".height-measurement .refusal"));
        Assert.Equal("3", await board.Page.Locator("[name=difference-3]").InputValueAsync());
    }

    [Fact]
    public async Task A_beam_read_both_ways_round_goes_to_the_daemon_as_it_was_read_and_comes_into_effect()
    {
        var board = await Differences();
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        foreach (var (row, reading, reversed) in new[] { (0, "0.09", "-0.03"), (1, "0.02", "0.10"), (2, "-0.01", "0.09") })
        {
            await board.Page.Locator($"[name=way-{row}]").SelectOptionAsync("beam with inclinometer");
            await board.Page.Locator($"[name=reading-{row}]").FillAsync(reading);
            await board.Page.Locator($"[name=reversed-{row}]").FillAsync(reversed);
        }

        // One beam for all three.
        await board.Page.Locator("[name=span-0]").FillAsync("1500");
        await board.Page.Locator("[name=difference-3]").FillAsync("0.9");
        await board.Page.Locator("[name=pad-uncertainty]").FillAsync("0.3");
        await board.Page.Locator("[name=beam-uncertainty]").FillAsync("0.01");
        await board.Page.Locator("[data-do=check-height-measurement]:not([disabled])").ClickAsync();
        await board.Has(".height-measurement table");
        await Look.AtAllSizes(board, "patch-differences");
        await board.Page.Locator("[data-do=save-height-measurement]:not([disabled])").ClickAsync();
        await board.Has("[data-height-measurement=in-effect]");

        var report = new Patch.PatchClient(bay.Rig.Daemon.Channel).GetPatch(new GetPatchRequest(), cancellationToken: TestContext.Current.CancellationToken);
        Assert.Equal(1u, report.Shape.Spare);
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"Closure error {report.Shape.ClosureMm:0.00} mm"), await board.Text(".report [data-value=closure]"));
        // Half the difference of the two readings is the tilt, its sine times the span the height: plain geometry. The adjustment spreads 0.1 mm over four, so it moves this one by hundredths.
        var expected = 1500 * Math.Sin((0.09 + 0.03) / 2 * Math.PI / 180);
        Assert.Equal(expected, report.Shape.HeightsMm.Rf.Estimate - report.Shape.HeightsMm.Lf.Estimate, 0.06);
        await SeenFromTheSide(board);
        await board.Page.Locator("[data-do=clear-height-measurement]:not([disabled])").ClickAsync();
        await board.Has("[data-height-measurement=none]");
        Assert.Empty(board.Errors);
    }

    // RF stands higher than LF, and in the picture too, until shims beneath LF have brought it up.
    private static async Task SeenFromTheSide(BoardPage board)
    {
        Assert.Equal(4, await board.Page.Locator(".patch-sides figure").CountAsync());
        Assert.Equal(8, await board.Page.Locator(".patch-sides .drop").CountAsync());
        Assert.Contains(await board.Text(".report [data-value=height-LF]"), await board.Text("[data-side=LF-RF] figcaption"));
        Assert.InRange(await Above(board, "RF", "LF"), 1, double.MaxValue);
        await board.Page.Locator("[name=shims]").FillAsync("1 x 8, 0.5 x 8, 0.1 x 8");
        await board.Page.Locator("[data-do=plan-shims]:not([disabled])").ClickAsync();
        await board.Has("[data-side=LF-RF] [data-shim=LF]");
        Assert.Matches("moves cross weight by", await board.Text("[data-value=effect-after]"));
        // By how much the picture is exaggerated stands on it: the bar is 1 mm, and no pad stands more than the 0.5 mm above another that were asked for.
        var bar = await board.Page.EvaluateAsync<double>("document.querySelector('[data-side=LF-RF] .line').getBBox().height");
        Assert.InRange(await Above(board, "RF", "LF") / bar, -0.55, 0.55);
        await Look.AtAllSizes(board, "patch-sides");
        await Look.AxeFindsNothing(board);
    }

    private static Task<double> Above(BoardPage board, string one, string other) =>
        board.Page.EvaluateAsync<double>($"document.querySelector('[data-side=LF-RF] [data-plate={other}]').y.baseVal.value - document.querySelector('[data-side=LF-RF] [data-plate={one}]').y.baseVal.value");

    private async Task<BoardPage> Differences()
    {
        // A height measurement form of its own, not what another test has typed.
        var board = await bay.Show(new PageSetup { Path = "device" });
        await board.Go("patch");
        await board.Page.Locator("[name=height-measurement-by][value=differences]").CheckAsync();
        await board.Has("[name=difference-0]");
        return board;
    }
}
