using Board.Tests.Pages;

namespace Board.Tests;

/// <summary>What the page shows when there is nothing to show: never a number that looks live.</summary>
[Collection(AloneTests.Name)]
public class LossTests(AloneBay bay)
{
    private const string NoLoads = "[...document.querySelectorAll('[data-value=load], [data-value=cross]')].every(e => e.innerText.trim() === '\u2013')";

    // The others still carry what they carry; nothing is claimed about it.
    private const string NothingOfRf = """
        [...document.querySelectorAll('[data-corner=RF] [data-value=load], [data-value=cross]')].every(e => e.innerText.trim() === '–')
        && [...document.querySelectorAll('[data-corner]:not([data-corner=RF]) [data-value=load]')].every(e => e.innerText.startsWith('~'))
        """;

    [Fact]
    public async Task An_unplugged_pad_is_told_within_a_second_with_its_remedy()
    {
        var board = await bay.Show();
        bay.Rig.Simulator.Do("""{"do":"unplug","corner":"RF"}""");
        try
        {
            var took = await board.Until($"document.querySelector('[data-corner=RF] .fault') && {NothingOfRf}", 10);
            Assert.InRange(took.TotalSeconds, 0, 1);
            Assert.Equal("incomplete", await board.Verdict());
            Assert.Equal("live", await board.Freshness());
            Assert.Contains("SL-10", await board.Text(".faults"));
        }
        finally
        {
            bay.Rig.Simulator.Do("""{"do":"replug","corner":"RF"}""");
        }

        await board.UntilVerdict("settled");
    }

    [Fact]
    public async Task A_raised_car_has_no_loads_and_a_caution()
    {
        var board = await bay.Show();
        var places = await board.Page.EvaluateAsync<string>(Sight.Places);
        bay.Rig.Simulator.DoAndWait("""{"do":"jack","corners":["LF","RF"],"mm":150}""");
        try
        {
            await board.UntilVerdict("raised");
            await board.Until(NoLoads, 2);
            Assert.Contains("Nobody under a car that hangs on a jack", await board.Text(".live-caution"));
            Assert.Equal(places, await board.Page.EvaluateAsync<string>(Sight.Places));
        }
        finally
        {
            bay.Rig.Simulator.DoAndWait("""{"do":"lower"}""");
        }

        await board.UntilVerdict("settled");
    }

    [Fact]
    public async Task Without_the_daemon_nothing_is_live_and_it_comes_back_by_itself_within_5_seconds()
    {
        var board = await bay.Show();
        bay.Rig.Daemon.Process.Kill();
        var took = await board.UntilFreshness("held", 10);
        Assert.InRange(took.TotalSeconds, 0, 1.5);
        Assert.Equal("", await board.Verdict());
        Assert.Equal("", await board.Text(".aim strong"));
        Assert.Contains("old", await board.Text(".freshness"));
        Assert.Contains("SL-42", await board.Text(".faults"));
        // One age on each view: that of the loads, at its top.
        foreach (var view in new[] { "health", "work-session" })
        {
            await board.Page.Locator($"nav a[href={view}]").ClickAsync();
            await board.Has($".{view} .held-note");
            Assert.Matches("^held, [0-9.]+ s old$", await board.Text(".freshness"));
            Assert.DoesNotMatch("[0-9]", await board.Text(".held-note"));
        }

        await board.Page.Locator("nav a[href='']").First.ClickAsync();
        await board.Has(".live-view");
        bay.Rig.RestartDaemon();
        took = await board.UntilFreshness("live", 20);
        Assert.InRange(took.TotalSeconds, 0, 5);
        await board.UntilVerdict("settled");
        Assert.Empty(board.Errors);
    }

    [Fact]
    public async Task Held_numbers_are_put_away_after_a_minute_at_most_and_a_page_without_a_daemon_says_so()
    {
        await using var board = await bay.Open();
        await board.UntilVerdict("settled");
        // The browser's own clock runs on by a minute at once; the daemon's messages stop meanwhile.
        bay.Rig.Daemon.Process.Kill();
        await board.UntilFreshness("held", 10);
        await board.Page.EvaluateAsync("const now = Date.now; Date.now = () => now() + 61000; const tick = performance.now.bind(performance); performance.now = () => tick() + 61000;");
        await board.UntilFreshness("absent", 5);
        await board.Until(NoLoads, 2);
        bay.Rig.RestartDaemon();
        await board.UntilVerdict("settled");
    }

    [Fact]
    public async Task A_page_that_nobody_sees_gives_its_connection_back_and_is_live_at_once_when_seen_again()
    {
        var board = await bay.Show();
        await board.Page.EvaluateAsync(Sight.Unseen, true);
        await board.UntilFreshness("held", 5);
        await board.Page.EvaluateAsync(Sight.Unseen, false);
        await board.UntilFreshness("live", 5);
        await board.UntilVerdict("settled");
    }
}
