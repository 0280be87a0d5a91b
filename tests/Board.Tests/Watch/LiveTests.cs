using Board.Tests.Pages;
using ScaleLink.Api.V1;

namespace Board.Tests.Watch;

/// <summary>The live view against the gRPC feed of the same daemon.</summary>
[Collection(CrewBayTests.Name)]
public class LiveTests(SharedBay bay)
{
    private const double KilogramsInAPound = 0.45359237;

    [Fact]
    public async Task Numbers_on_the_page_are_those_of_the_feed()
    {
        var board = await bay.Show();
        var loads = bay.Rig.Settled();
        foreach (var corner in loads.Corners)
            await Agrees(board, $"[data-corner={corner.Corner.ToString().ToUpperInvariant()}] [data-value=load]", corner.LoadKg);
        await Agrees(board, "[data-value=cross]", loads.CrossWeightPercent);
        await Agrees(board, "[data-value=total]", loads.TotalKg);
        await Agrees(board, "[data-value=front]", loads.FrontWeightPercent);
        await Agrees(board, "[data-value=left]", loads.LeftSideWeightPercent);
        await Agrees(board, "[data-value=front-side]", loads.FrontLeftRightDifferenceKg);
        await Agrees(board, "[data-value=rear-side]", loads.RearLeftRightDifferenceKg);
        Assert.Equal(loads.Corners.Count(c => !c.Calibrated), await board.Page.Locator(".corner .nominal-only").CountAsync());
        Assert.Contains("(RF + LR) / total", await board.Text(".cross h2"));
        Assert.Empty(board.Errors);
    }

    [Fact]
    public async Task Pounds_are_exact_and_stay_chosen_on_this_device()
    {
        var board = await bay.Show(new PageSetup { Path = "device" });
        await board.Page.Locator("input[name=unit][value=lb]").CheckAsync();
        await board.Reload();
        await board.Go("");
        var total = bay.Rig.Settled().TotalKg;
        Assert.Contains("lb", await board.Text("[data-value=total]"));
        Assert.InRange((await board.Number("[data-value=total]"))!.Value * KilogramsInAPound, total.Estimate - 4 * total.StandardUncertainty, total.Estimate + 4 * total.StandardUncertainty);
        await board.Go("device");
        await board.Page.Locator("input[name=unit][value=kg]").CheckAsync();
    }

    [Fact]
    public async Task Nothing_jumps_while_the_car_is_leant_on_and_settles_again()
    {
        var board = await bay.Show();
        var before = await board.Page.EvaluateAsync<string>(Sight.Places);
        bay.Rig.Simulator.Do("""{"do":"lean","corner":"RF","kg":20,"seconds":1}""");
        await board.Until("document.querySelector('[data-verdict]').dataset.verdict !== 'settled'");
        Assert.Equal(before, await board.Page.EvaluateAsync<string>(Sight.Places));
        await board.UntilVerdict("settled");
        Assert.Equal(before, await board.Page.EvaluateAsync<string>(Sight.Places));
    }

    [Fact]
    public async Task A_turn_of_a_perch_adds_a_point_to_the_trace_and_tilts_the_beam()
    {
        var board = await bay.Show();
        // Of many only the last are drawn: the newest one's number tells.
        const string Newest = "[...document.querySelectorAll('.trace .step-label')].map(l => l.textContent).join()";
        var before = await board.Page.EvaluateAsync<string>(Newest);
        var tilt = await board.Page.Locator(".beam .bar").GetAttributeAsync("style");
        Turn("RR", 1);
        await board.Until($"{Newest} !== '{before}'");
        Assert.NotEqual(tilt, await board.Page.Locator(".beam .bar").GetAttributeAsync("style"));
        Turn("RR", -1);
    }

    private void Turn(string corner, double turns)
    {
        bay.Rig.Simulator.DoAndWait($$"""{"do":"turn","corner":"{{corner}}","turns":{{turns}}}""");
        bay.Rig.Settled();
    }

    // The page and the feed are not read at the same instant: both stay within what the reading itself claims.
    private static async Task Agrees(BoardPage board, string selector, MeasuredValue quantity)
    {
        var shown = await board.Number(selector);
        Assert.NotNull(shown);
        Assert.InRange(shown.Value, quantity.Estimate - 4 * quantity.StandardUncertainty, quantity.Estimate + 4 * quantity.StandardUncertainty);
    }
}
