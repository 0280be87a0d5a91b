using Board.Tests.Pages;

namespace Board.Tests.WorkSessions;

/// <summary>Nothing on the view under the car moves, whatever befalls the bay while perches are turned.</summary>
[Collection(TurningBayTests.Name)]
public class CrewPlacesTests(SharedBay bay)
{
    [Fact]
    public async Task Somebody_leans_a_pad_is_unplugged_the_daemon_stands_still_and_all_is_where_it_was()
    {
        var page = new CrewOnPage(bay);
        var (crew, board) = await page.Planned();
        await page.Same(board, "planned", "settled");

        bay.Rig.Simulator.Do("""{"do":"lean","corner":"RF","kg":25}""");
        await board.UntilVerdict("disturbed");
        await page.Same(board, "disturbed", null);
        bay.Rig.Simulator.Do("""{"do":"lean","corner":"RF","kg":0}""");

        bay.Rig.Simulator.Do("""{"do":"unplug","corner":"RF"}""");
        await board.UntilVerdict("incomplete");
        await page.Same(board, "absent", "incomplete");
        bay.Rig.Simulator.Do("""{"do":"replug","corner":"RF"}""");
        await board.UntilVerdict("settled");

        bay.Rig.Daemon.Process.Suspend();
        try
        {
            await board.UntilFreshness("held", 10);
            await page.Same(board, "held", null);
        }
        finally
        {
            bay.Rig.Daemon.Process.Resume();
        }

        await board.UntilFreshness("live", 30);
        bay.Rig.Simulator.Do("""{"do":"settle","by":"both","seconds":3}""");
        await board.Until("['moving', 'settling'].includes(document.querySelector('[data-verdict]').dataset.verdict)");
        await page.Same(board, "settling", null);
        await board.UntilVerdict("settled");
        page.End(crew);
    }
}
