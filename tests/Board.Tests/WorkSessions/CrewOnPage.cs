using System.Globalization;
using Board.Tests.Pages;
using ScaleLink.Api.V1;
using ScaleLink.Measure;
using Shared.Rig;

namespace Board.Tests.WorkSessions;

/// <summary>A crew under the car with the page in its hand, and where the page has its controls.</summary>
internal sealed class CrewOnPage(SharedBay bay)
{
    // Every box that people aim at or look for, by its name.
    private const string Places = """
        () => ['.verdict', '.cross', '.aim', '.beam', '.next', '.corner.lf', '.corner.rf', '.corner.lr', '.corner.rr', '.perch-buttons', '.perch-buttons button', '.bench .go'].flatMap(s => [...document.querySelectorAll(s)].map((e, i) => {
          const box = e.getBoundingClientRect();
          return `${s} ${i}=${box.left.toFixed(0)} ${box.top.toFixed(0)} ${box.width.toFixed(0)} ${box.height.toFixed(0)}`;
        }))
        """;

    public static readonly (int Width, int Height)[] Sizes = [(390, 844), (1280, 800), (1920, 1080)];

    // Nine parts, four tiles, their twelve buttons in four groups, and the thumb's own where there is one.
    private const int Least = 25;

    private readonly Dictionary<(int, int), Dictionary<string, string>> _places = [];
    private Corners _turned;

    /// <summary>A baseline off target is on record and its plan on the page, whose cautions were read.</summary>
    public async Task<(CrewAtWork, BoardPage)> Planned()
    {
        var crew = new CrewAtWork(bay.Rig);
        crew.ChooseHeron();
        // Off target whatever the test before has left.
        Turn(crew, new(0, 1.5, 0, 0));
        crew.Prepare();
        if (crew.SettleAndWeigh().Perches.Count(p => p.Left != 0) < 2)
            Assert.Fail("The plan turns too little to be looked at.");
        var board = await bay.Show(new PageSetup { Path = "work-session" });
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        await board.Go("");
        await board.Page.Locator("[data-do=read-cautions]:not([disabled])").ClickAsync();
        await board.Has("details.live-caution");
        await board.Has("[data-do=as-planned]:not([disabled])");
        return (crew, board);
    }

    /// <summary>Perches of the simulated car are turned, whatever the session says.</summary>
    public void Turn(CrewAtWork crew, Corners turns)
    {
        crew.Turn(turns.ToWire());
        _turned += turns;
    }

    /// <summary>The session ends, and the car is as it was found.</summary>
    public void End(CrewAtWork crew)
    {
        Turn(crew, -1 * _turned);
        bay.Rig.Daemon.WorkSessionControl.AbandonSession(new AbandonSessionRequest { By = CrewAtWork.By, Because = "the test is over" }, cancellationToken: TestContext.Current.CancellationToken);
        bay.Rig.Simulator.Do("""{"do":"bars","front":true,"rear":true}""");
        bay.Rig.Simulator.DoAndWait("""{"do":"settle","by":"both","seconds":1.5}""");
        bay.Rig.Settled();
    }

    /// <summary>Whatever stands on the page now and stood there before has its place at every size.</summary>
    public async Task Same(BoardPage board, string name, string? verdict)
    {
        foreach (var (width, height) in Sizes)
        {
            await board.Resize(width, height, isDark: false);
            await board.Page.EvaluateAsync("scrollTo(0, 0)");
            var now = (await board.Page.EvaluateAsync<string[]>(Places)).Select(p => p.Split('=')).ToDictionary(p => p[0], p => p[1]);
            await Look.At(board, $"crew-{name}", isDark: false);
            // The tiles and all of their buttons at least.
            Assert.InRange(now.Count, Least, int.MaxValue);
            if (_places.TryAdd((width, height), now))
                continue;
            var before = _places[(width, height)];
            Assert.Empty(now.Keys.Intersect(before.Keys).Where(k => now[k] != before[k]).Select(k => $"{name}, {width} px: {k} {now[k]}, before {before[k]}"));
        }

        await board.Resize(Sizes[1].Width, Sizes[1].Height, isDark: false);
        if (verdict is not null)
            Assert.Equal(verdict, await board.Verdict());
    }

    /// <summary>What is left to turn at each corner, as the page has it.</summary>
    public static async Task<Dictionary<string, double>> Left(BoardPage board)
    {
        var left = new Dictionary<string, double>();
        foreach (var corner in Simulator.Corners)
            left[corner] = double.Parse((await board.Page.Locator($"[data-value=perch-{corner}]").GetAttributeAsync("data-left"))!, CultureInfo.InvariantCulture);
        return left;
    }
}
