using System.Globalization;
using Board.Tests.Pages;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Board.Tests.WorkSessions;

/// <summary>
/// A whole session with one thumb on a phone. From the first weighing to the finished sheet in two steps of four perches at most 25 taps, without
/// scrolling; the preparation one confirmation an item. The project's own requirement; no published source.
/// </summary>
[Collection(TurningBayTests.Name)]
public class CrewTapsTests(SharedBay bay)
{
    private const int MostTaps = 25;
    private const string OnRecord = "document.querySelectorAll('.trace .settle').length === ";

    private int _weighings;

    [Fact]
    public async Task A_session_of_two_steps_at_four_perches_takes_at_most_25_taps_and_no_scrolling()
    {
        var crew = new CrewAtWork(bay.Rig);
        crew.ChooseHeron();
        // Off target by all four, so that there is something to turn at each.
        crew.Turn(new CornerNumbers { Lf = -1, Rf = 1, Lr = 1, Rr = -1 });
        bay.Rig.Simulator.Do("""{"do":"bars","front":false,"rear":false}""");
        LeaveOutWhatTheBaySees();
        var board = await bay.Show(new PageSetup { Width = 390, Height = 844, Path = "work-session" });
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        await board.Page.Locator("nav a[href='']").ClickAsync();
        var thumb = new ThumbOnPage(board);

        await thumb.Tap("[data-do=read-cautions]");
        await board.Has("details.live-caution");
        await Look.At(board, "taps-preparing", isDark: false);
        var toSee = crew.Session.Preparation.Count(c => c is { Done: false, Skipped: false });
        for (var seen = 0; seen < toSee; seen++)
            await Confirm(board, thumb);
        Assert.Equal(toSee + 1, thumb.CountAnew());

        await Look.At(board, "taps-baseline", isDark: false);
        await Weigh(board, thumb, "weigh");
        var plan = await FourToTurn(board);
        // An eighth at each, and a look at what it does.
        var some = plan.ToDictionary(p => p.Key, p => 0.125 * Math.Sign(p.Value));
        foreach (var (corner, by) in some)
            await thumb.Tap($"[data-do={(by > 0 ? "more" : "less")}-{corner}]");
        await Turned(board, crew, some);
        await Look.At(board, "taps-partly", isDark: false);
        await Weigh(board, thumb, "weigh-so-far");
        plan = await FourToTurn(board);
        foreach (var corner in plan.Keys)
            await thumb.Tap($"[data-do=did-{corner}]");
        await Turned(board, crew, plan);
        await Weigh(board, thumb, "weigh");
        while (crew.Session is { State: not SessionState.Finishing } or { WeighNext: true } or { Standing.Verdict: not AimVerdict.OnTarget })
            await Weigh(board, thumb, "weigh");
        await End(board, thumb, crew);

        TestContext.Current.TestOutputHelper!.WriteLine($"{thumb.Taps} taps from the first weighing to the sheet, {toSee + 1} before");
        Assert.InRange(thumb.Taps, 1, MostTaps);
        Assert.Empty(board.Errors);
    }

    // Whether pads are calibrated and level is nobody's to tick: a colleague has said why they stand as they are.
    private void LeaveOutWhatTheBaySees()
    {
        var control = bay.Rig.Daemon.WorkSessionControl;
        foreach (var check in control.StartSession(new StartSessionRequest { By = CrewAtWork.By, Title = "Bramble Moor, by thumb" }).Preparation.Where(c => c is { Done: false, SeenOtherwise: true }))
            control.SetCheck(new SetCheckRequest { By = CrewAtWork.By, Key = check.Key, Skip = true, Note = "the simulator's pads are as they are" });
    }

    private async Task End(BoardPage board, ThumbOnPage thumb, CrewAtWork crew)
    {
        await Look.At(board, "taps-last", isDark: false);
        bay.Rig.Simulator.Do("""{"do":"bars","front":true,"rear":true}""");
        while (crew.Session.LastSteps.Any(c => c is { Done: false, Skipped: false }))
        {
            if (crew.Session.WeighNext)
                await Weigh(board, thumb, "weigh");
            else
                await Confirm(board, thumb);
        }

        await Look.At(board, "taps-finish", isDark: false);
        await thumb.Tap("[data-do=finish]");
        await board.Has(".ended");
        await Look.At(board, "taps-ended", isDark: false);
        var sheet = await board.Page.RunAndWaitForDownloadAsync(() => thumb.Tap(".ended [data-do=save-sheet]"));
        Assert.EndsWith(".html", sheet.SuggestedFilename);
    }

    private static async Task Confirm(BoardPage board, ThumbOnPage thumb)
    {
        var key = await board.Page.Locator(".at-hand [data-check]").GetAttributeAsync("data-check");
        await thumb.Tap($"[data-check={key}] :is([data-do=tick], [data-do=tick-as-last])");
        await board.Until($"!document.querySelector('.at-hand [data-check={key}]')");
    }

    private async Task Weigh(BoardPage board, ThumbOnPage thumb, string control)
    {
        bay.Rig.Simulator.DoAndWait("""{"do":"settle","by":"both","seconds":1.5}""");
        bay.Rig.Settled();
        await thumb.Tap($"[data-do={control}]");
        await board.Until($"{OnRecord}{++_weighings}");
    }

    private static async Task Turned(BoardPage board, CrewAtWork crew, Dictionary<string, double> turns)
    {
        foreach (var corner in turns.Keys)
            await board.Until($"document.querySelector('[data-value=perch-{corner}]').dataset.done === '{turns[corner].ToString(CultureInfo.InvariantCulture)}'");
        crew.Turn(new CornerNumbers { Lf = turns["LF"], Rf = turns["RF"], Lr = turns["LR"], Rr = turns["RR"] });
    }

    private static async Task<Dictionary<string, double>> FourToTurn(BoardPage board)
    {
        await board.Has("[data-value=perch-LF]");
        var left = await CrewOnPage.Left(board);
        Assert.Equal(4, left.Count(p => p.Value != 0));
        return left;
    }
}
