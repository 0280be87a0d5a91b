using Board.Tests.Pages;

namespace Board.Tests.WorkSessions;

/// <summary>One thumb on a phone: it presses what it sees, is counted, and never scrolls.</summary>
internal sealed class ThumbOnPage(BoardPage board)
{
    // Above the bar with the names of the views, which lies over the page, and not under anything else.
    private const string Reach = """
        selector => {
          const e = document.querySelector(selector), box = e.getBoundingClientRect(), bar = document.querySelector('.top nav').getBoundingClientRect();
          const there = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
          return [scrollY, box.top, innerHeight - box.bottom, box.left, innerWidth - box.right, e.closest('nav') ? 0 : bar.top - box.bottom, e.contains(there) ? 0 : -1];
        }
        """;

    /// <summary>How often it has pressed since it was told to count.</summary>
    public int Taps { get; private set; }

    /// <summary>Counts from here.</summary>
    public int CountAnew()
    {
        var before = Taps;
        Taps = 0;
        return before;
    }

    /// <summary>Presses a control where it stands.</summary>
    public async Task Tap(string control)
    {
        var ready = $"{control}:not([disabled], [aria-disabled])";
        await board.Has(ready);
        var reach = await board.Page.EvaluateAsync<double[]>(Reach, ready);
        if (reach[0] != 0 || reach.Skip(1).Any(d => d < -0.5))
            Assert.Fail($"{control} is out of the thumb's reach: scrolled {reach[0]}, to the edges, the bar and what covers it {string.Join(", ", reach.Skip(1))}");
        await board.Page.Locator(ready).First.ClickAsync();
        Assert.Equal(0, await board.Page.EvaluateAsync<double>("scrollY"));
        Taps++;
    }
}
