using Board.Tests.Pages;

namespace Board.Tests;

/// <summary>What the daemon draws while the page's own code is still on its way. Limits: the project's own requirements; no published source.</summary>
[Collection(AloneTests.Name)]
public class OpeningTests(AloneBay bay)
{
    private const string Drawn = "document.querySelector('.opening.drawn [data-verdict=settled]')";

    [Fact]
    public async Task Loads_can_be_read_before_the_page_runs_and_follow_the_car()
    {
        await using var board = await Waiting();
        var took = await board.Until(Drawn, 20);
        Assert.InRange(took.TotalSeconds, 0, 3);
        var loads = bay.Rig.Settled();
        foreach (var corner in loads.Corners)
            Assert.InRange((await board.Load(corner.Corner.ToString().ToUpperInvariant()))!.Value, corner.LoadKg.Estimate - 4 * corner.LoadKg.StandardUncertainty, corner.LoadKg.Estimate + 4 * corner.LoadKg.StandardUncertainty);
        bay.Rig.Simulator.Do("""{"do":"lean","corner":"RF","kg":20,"seconds":2}""");
        await board.Until("document.querySelector('.opening.drawn [data-verdict]').dataset.verdict !== 'settled'", 10);
        await board.UntilVerdict("settled");
        await board.Page.Locator("nav a[href='health']").ClickAsync();
        await board.Page.WaitForURLAsync("**/health");
    }

    [Fact]
    public async Task It_is_drawn_in_the_units_of_the_device_at_all_sizes_and_axe_finds_nothing()
    {
        await using var board = await Waiting("?unit=lb");
        await board.Until(Drawn, 20);
        Assert.Contains("lb", await board.Text("[data-value=total]"));
        await Look.AtAllSizes(board, "opening");
        // On a busy machine the loads may grow old meanwhile, and fade: looked at again.
        await Look.AxeFindsNothing(board, tries: 10);
    }

    [Fact]
    public async Task Without_the_daemon_nothing_stays_and_it_comes_back()
    {
        await using var board = await Waiting();
        await board.Until(Drawn, 20);
        bay.Rig.Daemon.Process.Kill();
        var took = await board.Until("!document.querySelector('[data-verdict], [data-freshness]')", 10);
        Assert.InRange(took.TotalSeconds, 0, 2);
        Assert.Contains("SL-420", await board.Text(".opening"));
        bay.Rig.RestartDaemon();
        await board.Until(Drawn, 30);
    }

    [Fact]
    public async Task A_page_that_hangs_while_it_starts_fades_by_itself()
    {
        await using var board = await Waiting();
        await board.Until(Drawn, 20);
        // As a runtime that compiles on a slow phone: no script runs meanwhile, no answer comes, and none can say that the loads grow old.
        var opacity = await board.Page.EvaluateAsync<double>("""
            async () => {
              const real = window.fetch;
              window.fetch = (_, { signal }) => new Promise((_, no) => signal.addEventListener('abort', () => no(signal.reason)));
              // An answer on its way comes, and is seen, before the browser hangs.
              await new Promise(done => setTimeout(done, 300));
              for (let frames = 0; frames < 2; frames++) await new Promise(requestAnimationFrame);
              const until = performance.now() + 1500;
              while (performance.now() < until);
              await new Promise(requestAnimationFrame);
              const seen = Number(getComputedStyle(document.querySelector('.opening')).opacity);
              window.fetch = real;
              return seen;
            }
            """);
        Assert.InRange(opacity, 0, 0.5);
        await board.Until($"{Drawn} && getComputedStyle(document.querySelector('.opening')).opacity === '1'", 10);
    }

    [Fact]
    public async Task The_page_takes_over_without_a_moment_of_no_reading()
    {
        await using var board = await bay.Open(prepare: page => page.AddInitScriptAsync(Sight.WatchForLive));
        await board.UntilVerdict("settled");
        var times = await board.Page.EvaluateAsync<double[]>(Sight.FirstLive);
        Assert.True(times[0] < times[1], $"drawn after {times[0]:0} ms, own after {times[1]:0} ms");
        // A machine that is busy may take so long that the loads have become old; gone they never are.
        Assert.DoesNotContain("absent", await board.Page.EvaluateAsync<string[]>("window.told"));
        Assert.Empty(board.Errors);
    }

    [Fact]
    public async Task Another_view_opens_without_it()
    {
        await using var board = await Waiting("work-session");
        await Task.Delay(TimeSpan.FromSeconds(1), TestContext.Current.CancellationToken);
        Assert.Contains("Opening the board.", await board.Text(".opening"));
    }

    // A page whose own code never comes.
    private Task<BoardPage> Waiting(string query = "") =>
        bay.Open(query, prepare: page => page.RouteAsync("**/_framework/dotnet*", _ => { }), isStarted: false);
}
