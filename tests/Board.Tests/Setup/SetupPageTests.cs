using System.Globalization;
using Board.Tests.Pages;
using Shared.Rig;

namespace Board.Tests.Setup;

/// <summary>A newcomer at the page with four pads nobody has described, by clicks alone: from a daemon without a bay file to live loads.</summary>
[Trait("needs", "bay")]
public class SetupPageTests(ITestOutputHelper output)
{
    private int _clicks;

    [Fact]
    public async Task A_newcomer_comes_from_unknown_pads_to_calibrated_loads_by_the_page_alone()
    {
        await using var chromium = await Chromium.Start();
        using var rig = new SetupRig("LF=pad-frames,RF=text,LR=modbus,RR=pad-frames");
        // Whatever is asked for leads to the guide.
        await using var board = await BoardPage.Open(chromium.Browser, $"http://127.0.0.1:{rig.PagePort}/");
        await board.Has(".setup[data-stage=waiting]");
        Assert.EndsWith("/setup", board.Page.Url);
        await Fill(board, "[data-do=who]", "Ada");
        await Fill(board, "[name=ports]", string.Join(' ', Simulator.Corners.Select(rig.Port)));
        await Look.AtAllSizes(board, "setup-waiting");
        await Click(board, "[data-do=search]");
        await board.Has(".setup[data-stage=searching]");
        await Look.AtAllSizes(board, "setup-searching");
        await board.Has(".setup[data-stage=placing] .awaited");
        Assert.Equal(4, await board.Page.Locator("[data-device]").CountAsync());
        await Look.AtAllSizes(board, "setup-placing");
        await Look.AxeFindsNothing(board);
        foreach (var corner in Simulator.Corners)
        {
            Assert.Contains($"({corner})", await board.Text("[data-value=guide]"));
            rig.Step(corner, on: true);
            await board.Until("document.querySelector('[data-value=guide]').textContent.includes('step off')");
            await Task.Delay(1500, TestContext.Current.CancellationToken);
            rig.Step(corner, on: false);
            await board.Has($".placed[data-corner={corner}]");
        }

        await Fill(board, "[name=bay-name]", "unit6");
        await Fill(board, "[name=capacity]", "600");
        await Look.AtAllSizes(board, "setup-finish");
        await Look.AxeFindsNothing(board);
        await Click(board, "[data-do=write]:not([disabled])");
        await board.Has(".live-view");
        foreach (var corner in new[] { "LF", "LR", "RR" })
            await Calibrate(rig, board, corner);

        await board.Page.Locator("nav a[href='']").ClickAsync();
        await Click(board, "[data-do=ask-zero]");
        await TakeZero(board);
        rig.Simulator.DoAndWait("""{"do":"lower"}""");
        rig.Simulator.DoAndWait("""{"do":"settle","seconds":2}""");
        await board.UntilVerdict("settled");
        var truth = rig.Simulator.TrueLoads();
        foreach (var (index, corner) in Simulator.Corners.Index())
            Assert.Equal(truth[index], (await board.Load(corner))!.Value, 1.0);
        output.WriteLine($"{_clicks} clicks, {rig.Stepped} pads stepped on");
        Assert.Empty(board.Errors);
    }

    // What Live offers is followed, and each step is done as it says.
    private async Task Calibrate(SetupRig rig, BoardPage board, string corner)
    {
        if (!board.Page.Url.EndsWith('/'))
            await board.Page.Locator("nav a[href='']").ClickAsync();
        await board.Until($"document.querySelector('[data-do=calibrate]')?.textContent.includes('{corner}')");
        await Click(board, "[data-do=calibrate]");
        await board.Has($"[name=pad][value={corner}]:checked");
        await Fill(board, "[name=pieces-0]", "3");
        await Fill(board, "[name=kg-0]", "50");
        await Fill(board, "[name=repetitions]", "1");
        await Fill(board, "[name=preloads]", "0");
        await board.Page.Locator("[name=way-down]").UncheckAsync();
        await Click(board, "[data-do=start-procedure]:not([disabled])");
        await board.Has(".step");
        while (await board.Page.Locator(".step").CountAsync() > 0)
        {
            var (number, load) = (await board.Page.Locator(".step").GetAttributeAsync("data-step"), await board.Page.Locator(".step").GetAttributeAsync("data-load"));
            rig.Simulator.Do(FormattableString.Invariant($$"""{"do":"mass","corner":"{{corner}}","kg":{{double.Parse(load!, CultureInfo.InvariantCulture)}},"at_once":true}"""));
            _clicks++;
            await board.Press($".step[data-step='{number}'] [data-do=record]:not([disabled])", $"body:not(:has(.step[data-step='{number}']))");
        }

        await Click(board, "[data-do=adopt]:not([disabled])");
        await board.Has("[data-procedure=adopted] [data-value=ending]");
        rig.Simulator.Do($$"""{"do":"mass","corner":"{{corner}}","kg":0,"at_once":true}""");
    }

    // A pad that is not at rest yet refuses, and is asked again as people do.
    private async Task TakeZero(BoardPage board)
    {
        await board.Has("[data-do=take-zero]");
        if (await board.Page.Locator(".confirm [data-do=who]").InputValueAsync() is "")
            await Fill(board, ".confirm [data-do=who]", "Ada");
        for (var tries = 1; tries < 8; tries++)
        {
            await Click(board, "[data-do=take-zero]");
            await board.Has(".zero .results");
            if (await board.Page.Locator(".zero .results .refusal").CountAsync() == 0)
                return;
            await Task.Delay(1000, TestContext.Current.CancellationToken);
            await Click(board, "[data-do=ask-zero]");
        }

        Assert.Fail(await board.Text(".zero"));
    }

    private async Task Click(BoardPage board, string selector)
    {
        _clicks++;
        await board.Page.Locator(selector).ClickAsync();
    }

    private static Task Fill(BoardPage board, string selector, string text) => board.Page.Locator(selector).FillAsync(text);
}
