using System.Globalization;
using Board.Tests.Pages;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Board.Tests.WorkSessions;

/// <summary>A whole work session by clicks. The crew does what the page says, and reads nothing but the page.</summary>
[Collection(CrewBayTests.Name)]
public class WorkSessionPageTests(SharedBay bay)
{
    // The project's own requirement; no published source.
    private const int MostSteps = 3;

    [Fact]
    public async Task A_session_goes_by_clicks_from_preparation_to_a_converged_exported_sheet()
    {
        new CrewAtWork(bay.Rig).ChooseHeron();
        bay.Rig.Simulator.Do("""{"do":"bars","front":false,"rear":false}""");
        var board = await bay.Show(new PageSetup { Path = "work-session" });
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        await board.Page.Locator("[name=title]").FillAsync("Bramble Moor, <b>Saturday</b>");
        await board.Page.Locator("[data-do=start]:not([disabled])").ClickAsync();
        await State(board, "preparing");
        await Tick(board, leaveOut: ["pads_proved", "patch_level"]);
        await State(board, "baseline");
        await Look.AtAllSizes(board, "work-baseline");
        await EnterHeights(board);
        await SettleAndWeigh(board);
        await State(board, "planning");
        foreach (var (corner, mm) in new[] { ("LF", "61.0"), ("RF", "61.5"), ("LR", "64.0"), ("RR", "63.5") })
            Assert.Equal($"ride {mm} mm", await board.Text($"[data-weighing='0'] [data-value=height-{corner}]"));
        await OnAPhoneTheBalanceComesFirst(board);
        await NameWhatNobodyRecorded(board);
        await TapAndUndoOnTheLiveView(board);
        await Converge(board);
        await BeSure(board);
        await LastSteps(board);
        await board.Page.Locator("[data-do=finish]:not([disabled])").ClickAsync();
        await board.Has(".ended");
        Assert.Contains("Student t", await board.Text(".ended"));
        await SheetIsSaved(board);
        Assert.Empty(board.Errors);
    }

    [Fact]
    public async Task A_step_that_surprised_is_asked_about_until_the_crew_stands_by_it()
    {
        var crew = new CrewAtWork(bay.Rig);
        crew.ChooseHeron();
        crew.Prepare();
        crew.SettleAndWeigh();
        var board = await bay.Show(new PageSetup { Path = "work-session" });
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        // Planning, or finishing where the test before has left the car on target.
        await board.Has("[data-weighing='0']");
        // RF is said to have been turned, and LF was.
        bay.Rig.Daemon.WorkSessionControl.RecordAdjustment(new RecordAdjustmentRequest { By = CrewAtWork.By, Turns = new CornerNumbers { Rf = 1 } }, cancellationToken: TestContext.Current.CancellationToken);
        crew.Turn(new CornerNumbers { Lf = 1 });
        crew.SettleAndWeigh();
        await board.Until("document.querySelector('.now .findings')?.innerText.includes('SL-550')");
        Assert.Contains("It reads as if LF had been turned instead of RF", await board.Text(".now .findings"));
        await board.Has(".confirm");
        await Look.AtAllSizes(board, "work-surprise");
        await board.Page.Locator("[data-do=confirm]:not([disabled])").ClickAsync();
        await board.Until("!document.querySelector('.now').innerText.includes('SL-550') && !document.querySelector('.confirm')");
        Assert.True(crew.Session.Weighings[^1].Answered);
        bay.Rig.Daemon.WorkSessionControl.AbandonSession(new AbandonSessionRequest { By = CrewAtWork.By, Because = "the test is over" }, cancellationToken: TestContext.Current.CancellationToken);
        crew.Turn(new CornerNumbers { Lf = -1 });
        bay.Rig.Simulator.Do("""{"do":"bars","front":true,"rear":true}""");
        bay.Rig.Settled();
    }

    [Fact]
    public async Task What_is_left_of_the_preparation_is_ticked_in_one_go_and_says_so()
    {
        var crew = new CrewAtWork(bay.Rig);
        crew.ChooseHeron();
        bay.Rig.Daemon.WorkSessionControl.StartSession(new StartSessionRequest { By = CrewAtWork.By, Title = "Bramble Moor, Sunday" }, cancellationToken: TestContext.Current.CancellationToken);
        var board = await bay.Show(new PageSetup { Path = "work-session" });
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        // One is looked at; the others are not.
        await board.Page.Locator("[data-check=bars_disconnected] [data-do=tick]:not([disabled])").ClickAsync();
        await board.Has("[data-check=bars_disconnected][data-kind=done]");
        await board.Page.Locator("[data-do=tick-rest]:not([disabled])").ClickAsync();
        await board.Until("!document.querySelector('[data-do=tick-rest]') && document.querySelector('.checks').innerText.includes('ticked together, not individually confirmed')");
        var checks = crew.Session.Preparation;
        Assert.False(checks.Single(c => c.Key == "bars_disconnected").TickedTogether);
        Assert.DoesNotContain("together", await board.Text("[data-check=bars_disconnected]"));
        // What the bay sees for itself is not ticked against it: pads that were never calibrated stay as they are.
        Assert.Equal((false, true), checks.Where(c => c.Key == "pads_proved").Select(c => (c.Done, c.SeenOtherwise)).Single());
        var together = checks.First(c => c.TickedTogether).Key;
        await board.Page.Locator($"[data-check={together}] [data-do=untick]:not([disabled])").ClickAsync();
        await board.Page.Locator($"[data-check={together}] [data-do=tick]:not([disabled])").ClickAsync();
        await board.Until($"document.querySelector('[data-check={together}][data-kind=done]') && !document.querySelector('[data-check={together}]').innerText.includes('together')");
        bay.Rig.Daemon.WorkSessionControl.AbandonSession(new AbandonSessionRequest { By = CrewAtWork.By, Because = "the test is over" }, cancellationToken: TestContext.Current.CancellationToken);
    }

    private async Task Converge(BoardPage board)
    {
        for (var step = 1; await board.StateName() != "finishing"; step++)
        {
            Assert.InRange(step, 1, MostSteps);
            var turns = new Dictionary<string, double>();
            foreach (var corner in Simulator.Corners)
                turns[corner] = double.Parse((await board.Page.Locator($"[data-value=plan-{corner}]").GetAttributeAsync("data-turns"))!, CultureInfo.InvariantCulture);
            await Look.AtAllSizes(board, "work-plan");
            // The prediction is drawn before anybody turns anything.
            Assert.Equal(1, await board.Page.Locator(".beam .ghost").CountAsync());
            await board.Page.Locator("[data-do=as-planned]:not([disabled])").ClickAsync();
            await State(board, "settling");
            foreach (var (corner, by) in turns.Where(t => t.Value != 0))
                bay.Rig.Simulator.DoAndWait(FormattableString.Invariant($$"""{"do":"turn","corner":"{{corner}}","turns":{{by}}}"""));
            await SettleAndWeigh(board);
        }

        var truth = bay.Rig.Simulator.Do("""{"do":"truth"}""")["cross_weight_pct"]!.GetValue<double>();
        Assert.InRange(truth, 50 - 0.35, 50 + 0.35);
    }

    private static async Task EnterHeights(BoardPage board)
    {
        await board.Page.Locator(".heights summary").ClickAsync();
        foreach (var (corner, mm) in new[] { ("LF", "61"), ("RF", "61,5"), ("LR", "64") })
            await board.Page.Locator($"[name=height-{corner}]").FillAsync(mm);
        // Three would be lost: the reading waits for the fourth.
        await board.Has("[data-ready=yes]");
        await board.Has("[data-do=weigh][disabled]");
        Assert.Equal(1, await board.Page.Locator(".heights .refusal").CountAsync());
        await board.Page.Locator("[name=height-RR]").FillAsync("63.2");
        await board.Page.Locator("[data-do=enter-heights]:not([disabled])").ClickAsync();
        await board.Has("[data-heights=on-record]");
        Assert.Contains("LF 61.0, RF 61.5, LR 64.0, RR 63.2 mm", await board.Text(".heights summary"));
        // With the reading they go on record together, corrected.
        foreach (var (corner, mm) in new[] { ("LF", "61"), ("RF", "61,5"), ("LR", "64"), ("RR", "63.5") })
            await board.Page.Locator($"[name=height-{corner}]").FillAsync(mm);
    }

    private static async Task OnAPhoneTheBalanceComesFirst(BoardPage board)
    {
        await board.Resize(390, 844, isDark: false);
        await board.Page.EvaluateAsync("scrollTo(0, 0)");
        var places = await board.Page.EvaluateAsync<double[]>("""
            () => ['.work-session .beam', '.work-session .now .do', '.work-session .turns'].flatMap(s => { const b = document.querySelector(s).getBoundingClientRect(); return [b.top, b.bottom]; })
            """);
        Assert.InRange(places[0], 0, 100);
        Assert.True(places[1] <= places[2] && places[3] <= places[4], $"Balance, next step, turns stand at {string.Join(", ", places)}.");
        // Above the bar at the bottom, without scrolling.
        var bar = await board.Page.EvaluateAsync<double>("document.querySelector('.top nav').getBoundingClientRect().top");
        Assert.InRange(places[3], 0, bar);
        await board.Resize(1280, 800, isDark: false);
    }

    private async Task NameWhatNobodyRecorded(BoardPage board)
    {
        bay.Rig.Simulator.DoAndWait("""{"do":"turn","corner":"RF","turns":-1}""");
        await SettleAndWeigh(board);
        await State(board, "naming");
        Assert.Contains("SL-551", await board.Text(".now .findings"));
        await Look.AtAllSizes(board, "work-naming");
        await Look.AxeFindsNothing(board);
        await board.Page.Locator("[name=turned-RF]").FillAsync("-1");
        await board.Page.Locator("[data-do=name-turns]:not([disabled])").ClickAsync();
        await State(board, "planning");
        Assert.Contains("RF down 1", await board.Text("[data-weighing='1']"));
        // It has its name: nothing asks for it any more.
        Assert.Equal(0, await board.Page.Locator("[data-do=confirm]").CountAsync());
        await board.Until("!document.querySelector('.work-session').innerText.includes('SL-551')");
    }

    private static async Task TapAndUndoOnTheLiveView(BoardPage board)
    {
        await board.Go("");
        await board.Page.Locator("[data-do=more-RF]:not([disabled])").ClickAsync();
        await board.Until("document.querySelector('[data-value=perch-RF]').dataset.done === '0.125'");
        Assert.Equal(1, await board.Page.Locator(".beam .ghost").CountAsync());
        await Look.AtAllSizes(board, "live-work");
        await board.Go("work-session");
        await board.Page.Locator("[data-do=undo]:not([disabled])").ClickAsync();
        await board.Until("document.querySelector('[data-value=perch-RF]').dataset.done === '0'");
    }

    // The page says how many settles are likely to decide it; a car that comes to rest at the edge may need more.
    private async Task BeSure(BoardPage board)
    {
        for (var more = 0; !(await board.Text(".standing .do")).Contains("on target", StringComparison.Ordinal) || (await board.Text(".standing .do")).Contains("so far", StringComparison.Ordinal); more++)
        {
            Assert.InRange(more, 0, 8);
            Assert.Contains("to be sure", await board.Text(".now .do"));
            Assert.Equal(1, await board.Page.Locator("[data-do=finish][disabled]").CountAsync());
            await SettleAndWeigh(board);
        }
    }

    private async Task LastSteps(BoardPage board)
    {
        bay.Rig.Simulator.Do("""{"do":"bars","front":true,"rear":true}""");
        await Look.AtAllSizes(board, "work-last");
        await Tick(board, except: "bars_without_preload");
        await SettleAndWeigh(board);
        // Whether the simulated links slide in without preload is the car's matter; that the page tells it is the page's.
        await board.Until("document.querySelector('[data-check=bars_without_preload]').innerText.includes('connected') || document.querySelector('[data-check=bars_without_preload] .findings')");
        if (await board.Page.Locator("[data-check=bars_without_preload][data-kind=open]").CountAsync() > 0)
            await LeaveOut(board, "bars_without_preload");
    }

    private async Task SettleAndWeigh(BoardPage board)
    {
        var before = await board.Page.Locator("[data-weighing]").CountAsync();
        bay.Rig.Simulator.Do("""{"do":"settle","by":"both","seconds":3}""");
        await board.Has("[data-ready=no]");
        await board.Has("[data-ready=yes]");
        await board.Page.Locator("[data-do=weigh]:not([disabled])").ClickAsync();
        await board.Until($"document.querySelectorAll('[data-weighing]').length === {before + 1}");
    }

    private static async Task Tick(BoardPage board, string[]? leaveOut = null, string except = "")
    {
        var open = await board.Page.EvaluateAsync<string[]>("[...document.querySelectorAll('[data-check][data-kind=open]')].map(e => e.dataset.check)");
        foreach (var key in open.Where(k => k != except))
        {
            if (leaveOut?.Contains(key) == true)
                await LeaveOut(board, key);
            else
                await board.Page.Locator($"[data-check={key}] [data-do=tick]:not([disabled])").ClickAsync();
            await board.Until($"document.querySelector('[data-check={key}]')?.dataset.kind !== 'open'");
        }
    }

    private static async Task LeaveOut(BoardPage board, string key)
    {
        var row = board.Page.Locator($"[data-check={key}]");
        // What the bay sees otherwise asks for the reason at once.
        if (await row.Locator("[aria-expanded=false]").CountAsync() > 0)
            await row.Locator("[aria-expanded=false]").ClickAsync();
        await row.Locator($"[name=note-{key}]").FillAsync("not today");
        await row.Locator(".details button:not([disabled])").ClickAsync();
    }

    private static async Task SheetIsSaved(BoardPage board)
    {
        var download = await board.Page.RunAndWaitForDownloadAsync(() => board.Page.Locator(".ended [data-do=save-sheet]").ClickAsync());
        var sheet = await File.ReadAllTextAsync((await download.PathAsync())!, TestContext.Current.CancellationToken);
        Assert.EndsWith(".html", download.SuggestedFilename);
        Assert.Contains("<svg", sheet);
        Assert.Contains("Bramble Moor", sheet);
        Assert.DoesNotContain("<b>Saturday", sheet);
    }

    private static Task<TimeSpan> State(BoardPage board, string state) => board.Until($"document.querySelector('.work-session')?.dataset.state === '{state}'");
}
