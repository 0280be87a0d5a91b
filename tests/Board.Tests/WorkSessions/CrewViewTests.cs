using System.Globalization;
using Board.Tests.Pages;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Board.Tests.WorkSessions;

/// <summary>
/// The view under the car: what is to be turned stands in its corner from the weighing to the next one, whatever the car does meanwhile, and nothing
/// on it moves.
/// </summary>
[Collection(TurningBayTests.Name)]
public class CrewViewTests(SharedBay bay)
{
    // Targets of a thumb in gloves: WCAG 2.2, 2.5.5, has 44 px; the distance is the project's own requirement.
    private const string SmallTargets = """
        () => [...document.querySelectorAll('.live-view button, .live-view a')].filter(e => e.checkVisibility()).map(e => e.getBoundingClientRect()).flatMap((a, i, all) => [
          ...(a.width < 44 || a.height < 44 ? [`${a.width.toFixed(0)} x ${a.height.toFixed(0)}`] : []),
          ...all.slice(i + 1).filter(b => Math.max(b.left - a.right, a.left - b.right, b.top - a.bottom, a.top - b.bottom) < 7.5).map(b => `${a.left.toFixed(0)},${a.top.toFixed(0)} too near ${b.left.toFixed(0)},${b.top.toFixed(0)}`)])
        """;

    private readonly CrewOnPage _page = new(bay);

    [Fact]
    public async Task The_plan_stays_in_its_corners_until_the_weighing_and_nothing_moves()
    {
        var (crew, board) = await _page.Planned();
        await _page.Same(board, "planned", "settled");
        Assert.Empty(await board.Page.EvaluateAsync<string[]>(SmallTargets));
        var plan = await CrewOnPage.Left(board);
        var todo = plan.Where(p => p.Value != 0).Select(p => p.Key).ToList();
        Assert.InRange(todo.Count, 2, 4);

        await board.Page.Locator($"[data-do=did-{todo[0]}]:not([disabled])").ClickAsync();
        await board.Until($"document.querySelector('[data-value=perch-{todo[0]}]').dataset.left === '0'");
        Assert.Equal([.. todo.Skip(1)], (await CrewOnPage.Left(board)).Where(p => p.Value != 0).Select(p => p.Key));
        Assert.Contains("Still to turn", await board.Text(".next .do"));
        Assert.DoesNotContain(todo[0], await board.Text(".next .do"));
        await _page.Same(board, "partly", null);
        await OnTheWall(board);
        await InTheDarkAndOnItsSide(board);

        bay.Rig.Simulator.DoAndWait("""{"do":"jack","mm":150}""");
        await board.UntilVerdict("raised");
        Assert.Equal([.. todo.Skip(1)], (await CrewOnPage.Left(board)).Where(p => p.Value != 0).Select(p => p.Key));
        Assert.Contains("Still to turn", await board.Text(".next .do"));
        await _page.Same(board, "raised", "raised");

        // A slip of the thumb, and back.
        await board.Page.Locator($"[data-do=undo-{todo[0]}]:not([disabled])").ClickAsync();
        await board.Until($"document.querySelector('[data-value=perch-{todo[0]}]').dataset.done === '0'");
        await board.Page.Locator("[data-do=as-planned]:not([disabled])").ClickAsync();
        await board.Until("[...document.querySelectorAll('.turn')].every(t => t.dataset.left === '0')");
        Assert.All(todo, corner => Assert.Equal(plan[corner], Done(board, corner).Result, 6));
        Assert.Contains("Put the car on", await board.Text(".next .do"));
        await board.Has("[data-do=weigh][aria-disabled]");
        await _page.Same(board, "done", "raised");

        _page.Turn(crew, new(plan["LF"], plan["RF"], plan["LR"], plan["RR"]));
        bay.Rig.Simulator.Do("""{"do":"lower"}""");
        await board.Until("!['raised', 'settled'].includes(document.querySelector('[data-verdict]').dataset.verdict)");
        await _page.Same(board, "moving", null);
        bay.Rig.Simulator.DoAndWait("""{"do":"settle","by":"both","seconds":1.5}""");
        await board.Has("[data-do=weigh]:not([aria-disabled])");
        await _page.Same(board, "settled", "settled");
        await board.Page.Locator("[data-do=weigh]:not([aria-disabled])").ClickAsync();
        await board.Until("[...document.querySelectorAll('.turn')].every(t => t.dataset.done === '0')");
        Assert.Equal(2, crew.Session.Weighings.Count);
        Assert.Empty(board.Errors);
        _page.End(crew);
    }

    [Fact]
    public async Task A_wrong_turn_is_put_right_by_the_suggestion_of_the_diagnosis()
    {
        var (crew, board) = await _page.Planned();
        // Written down, and turned up.
        bay.Rig.Daemon.WorkSessionControl.RecordAdjustment(new RecordAdjustmentRequest { By = CrewAtWork.By, Turns = new CornerNumbers { Lf = -1 } }, cancellationToken: TestContext.Current.CancellationToken);
        _page.Turn(crew, new(1, 0, 0, 0));
        crew.SettleAndWeigh();
        await board.Until("document.querySelector('.next .do').innerText.includes('Not what was expected')");
        await board.Has(".bench .surprise");
        await _page.Same(board, "surprise", "settled");
        Assert.Contains("as if LF had been turned the other way", await board.Text(".surprise [data-cause]"));
        Assert.Contains("That was it: LF up 1", await board.Text("[data-do=cause-0]"));
        await Look.AtAllSizes(board, "crew-surprise-causes");
        await board.Page.Locator("[data-do=cause-0]:not([disabled])").ClickAsync();
        await board.Until("!document.querySelector('.surprise')");
        await board.Go("work-session");
        Assert.Contains("written: LF down 1; put right by Ada", await board.Text("[data-weighing='1'] [data-value=written]"));
        Assert.Equal(1, crew.Session.TurnsSinceBaseline.Lf);
        _page.End(crew);
        // Its way stands in the list, on the scale that all sessions have.
        await board.Go("record");
        await board.Has(".miniature");
        Assert.Matches("^Cross weight reading by reading: [0-9.]+, [0-9.]+ %; target 50.0 ±0.2 %.$", await board.Page.Locator(".miniature").First.GetAttributeAsync("aria-label"));
        await Look.At(board, "record-miniature", isDark: false);
    }

    [Fact]
    public async Task Two_phones_that_press_at_once_take_one_step_and_both_show_it()
    {
        var (crew, board) = await _page.Planned();
        await using var other = await bay.Open();
        await other.Resize(390, 844, isDark: false);
        await other.Page.Locator("[data-do=who]").FillAsync("Ben");
        await other.Has("[data-do=as-planned]:not([disabled])");
        var before = crew.Session.Entry;

        // In the same instant, as two thumbs: the one answer is the step, the other that it was taken.
        await Task.WhenAll(Press(board), Press(other));
        foreach (var page in (BoardPage[])[board, other])
            await page.Until("[...document.querySelectorAll('.turn')].every(t => t.dataset.left === '0')");
        var session = crew.Session;
        Assert.Equal(before + 1, session.Entry);
        Assert.Single(session.OpenAdjustments);
        var told = new[] { await board.Text(".bench"), await other.Text(".bench") };
        Assert.Single(told, t => t.Contains("(SL-565)", StringComparison.Ordinal));

        // All as planned is taken back in one go by whoever looks, and both see the plan again.
        await other.Page.Locator("[data-do=undo]:not([disabled])").ClickAsync();
        foreach (var page in (BoardPage[])[board, other])
            await page.Has("[data-do=as-planned]:not([disabled])");
        Assert.Empty(crew.Session.OpenAdjustments);
        _page.End(crew);
    }

    [Fact]
    public async Task A_step_whose_answer_is_lost_on_the_way_to_the_phone_is_asked_about_and_shown_as_it_stands()
    {
        var (crew, first) = await _page.Planned();
        Assert.Empty(first.Errors);
        await using var link = new Relay(bay.Rig.PagePort);
        await using var board = await bay.Open(port: link.Port);
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        await board.Has("[data-do=as-planned]:not([disabled])");
        var before = crew.Session.Entry;

        link.LoseAnswers();
        await Press(board);
        Wait.Until(() => crew.Session.Entry == before + 1, Wait.Patience, "the step is on record");
        await board.Until("document.querySelector('.bench').innerText.includes('No answer yet')");
        link.Join();

        await board.UntilFreshness("live", 30);
        await board.Until("[...document.querySelectorAll('.turn')].every(t => t.dataset.left === '0') && !document.querySelector('.bench').innerText.includes('No answer yet')");
        Assert.Equal(before + 1, crew.Session.Entry);
        _page.End(crew);
    }

    [Fact]
    public async Task A_foot_switch_takes_the_next_step_and_takes_it_back_and_a_voice_says_what_comes()
    {
        var (crew, board) = await _page.Planned();
        await board.Go("device");
        await board.Page.Locator("[name=switch]").CheckAsync();
        await board.Page.Locator("[name=next-key]").PressAsync("F8");
        Assert.Equal("F8", await board.Page.Locator("[name=next-key]").InputValueAsync());
        await board.Page.Locator("[name=speak]").CheckAsync();
        // The browser's own voice is listened to: a test machine has no loudspeaker.
        await board.Page.EvaluateAsync("() => { window.said = []; const speak = speechSynthesis.speak.bind(speechSynthesis); speechSynthesis.speak = words => { window.said.push(words.text); speak(words); }; }");
        await board.Page.Locator("nav a[href='']").ClickAsync();
        await board.Has("[data-do=as-planned]:not([disabled])");

        await board.Page.Keyboard.PressAsync("F8");
        await board.Until("[...document.querySelectorAll('.turn')].every(t => t.dataset.left === '0')");
        await board.Until("window.said.some(s => s.includes('Settle the car'))");
        // A key that is held down is one press, and what is not settled is not weighed.
        bay.Rig.Simulator.DoAndWait("""{"do":"jack","mm":150}""");
        await board.UntilVerdict("raised");
        await board.Page.Keyboard.PressAsync("F8");
        await board.Until("window.said.includes('Not settled yet.')");
        Assert.Single(crew.Session.Weighings);
        await board.Page.Keyboard.PressAsync("PageUp");
        await board.Has("[data-do=as-planned]:not([disabled])");
        Assert.Empty(crew.Session.OpenAdjustments);

        bay.Rig.Simulator.DoAndWait("""{"do":"lower"}""");
        await board.Until("window.said.some(s => s.startsWith('Settled. Cross weight'))");
        await board.Go("device");
        await board.Page.Locator("[name=switch]").UncheckAsync();
        await board.Page.Locator("[name=speak]").UncheckAsync();
        Assert.Empty(board.Errors);
        _page.End(crew);
    }

    private static async Task Press(BoardPage board) => await board.Page.EvaluateAsync("document.querySelector('[data-do=as-planned]').click()");

    // From three metres: what is to be turned stands there too.
    private static async Task OnTheWall(BoardPage board)
    {
        await board.Resize(1920, 1080, isDark: true);
        await board.Page.Locator("button.screen").ClickAsync();
        await board.Has("[data-screen=big]");
        await Look.At(board, "crew-wall", isDark: true);
        Assert.All(await board.Page.EvaluateAsync<double[]>("[...document.querySelectorAll('.turn b')].map(e => parseFloat(getComputedStyle(e).fontSize) * 0.7)"), height => Assert.InRange(height, 0.08 * 1080, 0.2 * 1080));
        Assert.Equal(0, await board.Page.EvaluateAsync<int>("[...document.querySelectorAll('.perch-buttons, .go')].filter(e => e.checkVisibility()).length"));
        await board.Page.Locator("button.screen").ClickAsync();
        await board.Until("!document.querySelector('[data-screen=big]')");
    }

    // Half done, with all that the view can show at once.
    private static async Task InTheDarkAndOnItsSide(BoardPage board)
    {
        foreach (var (width, height) in CrewOnPage.Sizes.Append((844, 390)))
        {
            await board.Resize(width, height, isDark: true);
            await Look.At(board, "crew-partly", isDark: true);
        }

        await board.Resize(1280, 800, isDark: true);
        await Look.AxeFindsNothing(board, tries: 3);
        await board.Resize(1280, 800, isDark: false);
        await Look.AxeFindsNothing(board, tries: 3);
    }

    private static async Task<double> Done(BoardPage board, string corner) =>
        double.Parse((await board.Page.Locator($"[data-value=perch-{corner}]").GetAttributeAsync("data-done"))!, CultureInfo.InvariantCulture);
}
