using System.Globalization;
using Board.Tests.Pages;
using Microsoft.Playwright;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Board.Tests;

/// <summary>Car, patch, record and raw traces, by clicks against the same daemon's answers.</summary>
[Collection(SharedBayTests.Name)]
public class BenchTests(SharedBay bay)
{
    [Fact]
    public async Task A_car_file_is_chosen_and_a_slider_moves_the_ghost_of_the_beam_to_the_daemons_answer()
    {
        var board = await bay.Show(new PageSetup { Path = "car" });
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        await board.Choose("[data-do=car-file]", Heron.File);
        await board.Page.Locator("[data-do=save-car]:not([disabled])").ClickAsync();
        await board.Until("document.querySelector('.car')?.dataset.car === 'Heron'");

        bay.Rig.Settled();
        await board.Page.Locator("[name=turn-RF]").FillAsync("1.125");
        // A thumb takes the last eighth.
        await board.Page.Locator("[data-do=try-less-RF]").ClickAsync();
        var answer = new Cars.CarsClient(bay.Rig.Daemon.Channel).AskWhatIf(new AskWhatIfRequest { Turns = new CornerNumbers { Rf = 1 } }, cancellationToken: TestContext.Current.CancellationToken);
        await board.Until(string.Create(CultureInfo.InvariantCulture, $"Math.abs(document.querySelector('.whatif .ghost')?.dataset.ghost - {answer.Then.CrossWeightPercent.Estimate}) < 0.05"));
        Assert.True(answer.Then.CrossWeightPercent.Estimate > answer.Now.CrossWeightPercent.Estimate, "RF up takes load onto RF + LR.");
        await board.Page.Locator("[data-do=clear]").ClickAsync();
        await board.Until("!document.querySelector('.whatif .ghost')");
        await board.Page.Locator("[data-do=balance]:not([disabled])").ClickAsync();
        await board.Has(".balance .aims tbody tr");
        Assert.Equal(4, await board.Page.Locator(".balance .aims tbody tr").CountAsync());
        // Start and finish with each driver, as the feed says.
        var balance = new Cars.CarsClient(bay.Rig.Daemon.Channel).GetBalance(new GetBalanceRequest(), cancellationToken: TestContext.Current.CancellationToken);
        Assert.Equal(balance.Cases.Count, await board.Page.Locator(".races tbody tr").CountAsync());
        foreach (var state in balance.Cases)
        {
            var row = $".races [data-case='{state.Fuel.ToString().ToLowerInvariant()}, {state.Driver}']";
            Assert.Equal(state.Figures.TotalKg.Estimate, Leading(await board.Text($"{row} [data-value=total]")), 1.0);
            Assert.Equal(state.Figures.CrossWeightPercent.Estimate, Leading(await board.Text($"{row} [data-value=cross]")), 0.1);
        }

        Assert.Contains($"minimum {balance.ClassStanding.MinimumKg:0.0} kg: the lightest state, {balance.ClassStanding.Lightest}, has", await board.Text("[data-value=class]"));
        Assert.Contains(balance.ClassStanding.MissingKg > 0 ? "missing" : "to spare", await board.Text("[data-value=class]"));
        await Look.AtAllSizes(board, "car-balance");
        await BallastForAShare(board, balance.Figures.FrontWeightPercent.Estimate);
    }

    private async Task BallastForAShare(BoardPage board, double now)
    {
        await board.Page.Locator("[name=front-weight]").FillAsync("150");
        await board.Has("[data-value=share-lacking]");
        Assert.True(await board.Page.Locator("[data-do=balance]").IsDisabledAsync());
        var wanted = Math.Round(now - 0.5, 1);
        await board.Page.Locator("[name=front-weight]").FillAsync(wanted.ToString(CultureInfo.InvariantCulture));
        await board.Press("[data-do=balance]:not([disabled])", "[data-value=ballast-front_weight] li");
        var ways = new Cars.CarsClient(bay.Rig.Daemon.Channel).GetBalance(new GetBalanceRequest { FrontWeightPercent = wanted }, cancellationToken: TestContext.Current.CancellationToken).Ballast;
        Assert.Equal(ways.Count, await board.Page.Locator("[data-value=ballast-front_weight] li").CountAsync());
        var first = await board.Text("[data-value=ballast-front_weight] li");
        Assert.Equal(ways[0].Kg, Leading(first), 1.0);
        Assert.Contains($"gives {ways[0].SharePercent:0.0}", first);
        Assert.Contains(ways[0].To, first);
        await Look.At(board, "car-ballast", isDark: false);
    }

    private static double Leading(string text) => double.Parse(text.Split(' ')[0], CultureInfo.InvariantCulture);

    [Fact]
    public async Task A_car_file_with_mistakes_lists_them_with_their_remedy()
    {
        var board = await bay.Show(new PageSetup { Path = "car" });
        await board.Choose("[data-do=car-file]", new FilePayload { Name = "car.json", MimeType = "application/json", Buffer = "{ \"name\": \"\" }"u8.ToArray() });
        await board.Has(".shelf .findings li");
        Assert.Contains("SL-5", await board.Text(".shelf .findings"));
        Assert.Equal(0, await board.Page.Locator("[data-do=save-car]").CountAsync());
    }

    [Fact]
    public async Task A_car_is_described_by_questions_in_the_units_people_have()
    {
        var board = await bay.Show(new PageSetup { Path = "car" });
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        await board.Page.Locator(".shelf summary").ClickAsync();
        await board.Has("[data-question='front spring']");
        Assert.StartsWith("a guess: 60 ±", await board.Page.Locator("[name=car-front-spring]").GetAttributeAsync("placeholder"));
        await board.Page.Locator("[name=car-name]").FillAsync("Swallow");
        await board.Page.Locator("[name=car-wheelbase]").FillAsync("96.5 in");
        await board.Page.Locator("[name=car-front-track]").FillAsync("58 furlongs");
        await board.Page.Locator("[data-do=describe]:not([disabled])").ClickAsync();
        // Each at its field: one is not understood, one is missing; nothing that was typed is lost, not by looking elsewhere either.
        await board.Has("[data-question='front track'] .refusal");
        Assert.Contains("is no unit of this: mm, cm, m or in", await board.Text("[data-question='front track'] .refusal"));
        Assert.Contains("A number is needed here", await board.Text("[data-question='rear track'] .refusal"));
        Assert.Equal(2, await board.Page.Locator(".interview .refusal").CountAsync());
        await Look.At(board, "car-questions", isDark: false);
        await board.Page.Locator("nav a[href=health]").ClickAsync();
        await board.Page.Locator("nav a[href=car]").ClickAsync();
        await board.Page.Locator(".shelf summary").ClickAsync();
        Assert.Equal("96.5 in", await board.Page.Locator("[name=car-wheelbase]").InputValueAsync());
        await board.Page.Locator("[name=car-front-track]").FillAsync("58 in +-0.2");
        await board.Page.Locator("[name=car-rear-track]").FillAsync("1450");
        await board.Page.Locator("[name=car-front-spring]").FillAsync("400 lb/in +-5 %");
        await board.Page.Locator("[data-do=describe]:not([disabled])").ClickAsync();
        await board.Has("[data-do=save-car]");
        Assert.Contains("Only guessed: ", await board.Text(".shelf"));
        await board.Page.Locator("[data-do=save-car]:not([disabled])").ClickAsync();
        await board.Until("document.querySelector('.car')?.dataset.car === 'Swallow'");
        var car = new Cars.CarsClient(bay.Rig.Daemon.Channel).GetCar(new GetCarRequest(), cancellationToken: TestContext.Current.CancellationToken);
        using var file = System.Text.Json.JsonDocument.Parse(car.File);
        Assert.Equal(96.5 * 25.4, file.RootElement.GetProperty("wheelbase_mm").GetProperty("value").GetDouble(), 6);
    }

    [Fact]
    public async Task A_car_file_that_is_too_large_is_refused_by_name()
    {
        var board = await bay.Show(new PageSetup { Path = "car" });
        await board.Choose("[data-do=car-file]", new FilePayload { Name = "car.json", MimeType = "application/json", Buffer = new byte[256 * 1024 + 1] });
        await board.Has(".shelf .refusal");
        Assert.Contains("SL-559", await board.Text(".shelf .refusal"));
        Assert.Equal(0, await board.Page.Locator("[data-do=save-car]").CountAsync());
    }

    [Fact]
    public async Task A_height_measurement_is_entered_put_into_effect_shimmed_and_forgotten()
    {
        var board = await bay.Show(new PageSetup { Path = "patch" });
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        await board.Page.Locator("[name=height-measurement-by][value=heights]").CheckAsync();
        foreach (var (corner, mm) in new[] { ("LF", "3"), ("RF", "0"), ("LR", "0"), ("RR", "0,0") })
            await board.Page.Locator($"[name=pad-{corner}]").FillAsync(mm);
        await board.Page.Locator("[name=pad-uncertainty]").FillAsync("0.1");
        await board.Page.Locator("[data-do=check-height-measurement]:not([disabled])").ClickAsync();
        await board.Has(".height-measurement table");
        await board.Page.Locator("[data-do=save-height-measurement]:not([disabled])").ClickAsync();
        await board.Has("[data-height-measurement=in-effect]");
        // One pad of four 3 mm high: 2.25 over the mean, the others 0.75 under it.
        Assert.Matches(@"^\+2\.2\d mm ± 0\.\d\d mm", await board.Text(".report [data-value=height-LF]"));
        await board.Page.Locator("[name=shims]").FillAsync("1 x 8, 0.5 x 8");
        await board.Page.Locator("[data-do=plan-shims]:not([disabled])").ClickAsync();
        await board.Has("[data-value=shims] li");
        Assert.Contains("Fingers out", await board.Text(".shims .caution"));
        await Look.AtAllSizes(board, "patch-shims");
        await board.Page.Locator("[data-do=clear-height-measurement]:not([disabled])").ClickAsync();
        await board.Has("[data-height-measurement=none]");
    }

    [Fact]
    public async Task A_pad_that_leans_shows_it_as_a_bubble_on_its_high_side()
    {
        var board = await bay.Show(new PageSetup { Path = "patch" });
        await board.Until("document.querySelectorAll('[data-bubble] .drop').length === 4");
        bay.Rig.Simulator.Do("""{"do":"pad-tilt","corner":"RF","pitch_deg":0.8,"roll_deg":0}""");
        // Positive pitch is nose down: the rear edge is high.
        await board.Until("document.querySelector('[data-bubble=RF]')?.innerText.includes('rear high')");
        Assert.Equal("no", await board.Page.Locator("[data-bubble=RF]").GetAttributeAsync("data-level"));
        bay.Rig.Simulator.Do("""{"do":"pad-tilt","corner":"RF","pitch_deg":0,"roll_deg":0}""");
        await board.Until("document.querySelector('[data-bubble=RF]')?.dataset.level === 'yes'");
        bay.Rig.Settled();
    }

    [Fact]
    public async Task Two_sessions_are_compared_and_one_is_shown()
    {
        new CrewAtWork(bay.Rig).ChooseHeron();
        var control = new WorkSessionControl.WorkSessionControlClient(bay.Rig.Daemon.Channel);
        foreach (var title in new[] { "first", "second" })
        {
            control.StartSession(new StartSessionRequest { By = new StepBy { Who = "Ada" }, Title = title }, cancellationToken: TestContext.Current.CancellationToken);
            control.AbandonSession(new AbandonSessionRequest { By = new StepBy { Who = "Ada" }, Because = "for the list" }, cancellationToken: TestContext.Current.CancellationToken);
        }

        var board = await bay.Show(new PageSetup { Path = "record" });
        await board.Until("Number(document.querySelector('.record').dataset.sessions) >= 2");
        foreach (var title in new[] { "first", "second" })
            await board.Page.Locator(".record .line-up", new PageLocatorOptions { HasTextString = title }).First.Locator("input").CheckAsync();
        await board.Page.Locator("[data-do=compare]:not([disabled])").ClickAsync();
        await board.Has(".comparison");
        Assert.Contains("second, ", await board.Text(".comparison thead"));
        await board.Page.Locator("[data-do=show]").First.ClickAsync();
        await board.Has(".ended");
        Assert.Contains("given up", await board.Text(".ended h2"));
        await Look.AtAllSizes(board, "record-two");
    }

    [Fact]
    public async Task A_raw_trace_runs_only_while_it_is_open()
    {
        var board = await bay.Show(new PageSetup { Path = "health" });
        var trace = board.Page.Locator("[data-pad=RF] summary", new PageLocatorOptions { HasTextString = "Raw trace" });
        await trace.ClickAsync();
        await board.Until("Number(document.querySelector('[data-raw=RF]')?.dataset.samples) > 80");
        Assert.Contains("kg", await board.Text("[data-raw=RF]"));
        Assert.Contains("answers", await board.Text("[data-value=broker]"));
        Assert.Equal("nothing", await board.Text("[data-value=broker-refusals]"));
        await trace.ClickAsync();
        await board.Until("!document.querySelector('[data-raw]')");
    }
}
