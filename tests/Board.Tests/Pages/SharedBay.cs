using Microsoft.Playwright;
using Shared;
using Shared.Rig;

namespace Board.Tests.Pages;

/// <summary>One bay and one browser for many tests of the page; every test leaves the car settled on live pads.</summary>
public class SharedBay : IAsyncLifetime
{
    private BayRig? _rig;
    private Chromium? _chromium;
    private BoardPage? _board;

    internal BayRig Rig => _rig!;

    public async ValueTask InitializeAsync()
    {
        _chromium = await Chromium.Start();
        _rig = new BayRig("noise,quantisation,dead-load,offset,clock-offset,clock-drift,latency-batches");
        _rig.PutCarOn();
        _rig.Settled();
    }

    /// <summary>The board that all tests share, looked at as asked: to start one takes seconds.</summary>
    internal async Task<BoardPage> Show(PageSetup? setup = null)
    {
        _board ??= await Open();
        await _board.Show(setup ?? new PageSetup());
        return _board;
    }

    /// <summary>A board of its own, which the test closes.</summary>
    internal Task<BoardPage> Open(string query = "", int? port = null, Func<IPage, Task>? prepare = null, bool isStarted = true) =>
        BoardPage.Open(_chromium!.Browser, $"http://127.0.0.1:{port ?? Rig.PagePort}/{query}", prepare, isStarted);

    /// <summary>Processor time that the browser has spent in pages so far, s.</summary>
    internal async Task<double> RendererSeconds()
    {
        var session = await _chromium!.Browser.NewBrowserCDPSessionAsync();
        var processes = (await session.SendAsync("SystemInfo.getProcessInfo"))!.Value.GetProperty("processInfo");
        await session.DetachAsync();
        return processes.EnumerateArray().Where(p => p.GetProperty("type").GetString() == "renderer").Sum(p => p.GetProperty("cpuTime").GetDouble());
    }

    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        if (_board is not null)
            await _board.DisposeAsync();
        _rig?.Dispose();
        if (_chromium is not null)
            await _chromium.DisposeAsync();
    }
}

/// <summary>The machine when all that is loud is over, and a bay there.</summary>
public sealed class AloneBay : SharedBay
{
    public AloneBay(MachineTime machine) => machine.Quiet();
}

/// <summary>Tests that look at the page, on one bay, one after the other.</summary>
[Trait("needs", "bay")]
[CollectionDefinition(Name)]
public sealed class SharedBayTests : ICollectionFixture<SharedBay>
{
    public const string Name = "shared bay";
}

/// <summary>The same on another bay beside it: what a crew does in a day.</summary>
[Trait("needs", "bay")]
[CollectionDefinition(Name)]
public sealed class CrewBayTests : ICollectionFixture<SharedBay>
{
    public const string Name = "crew's bay";
}

/// <summary>And on a third: what it sees while perches are turned.</summary>
[Trait("needs", "bay")]
[CollectionDefinition(Name)]
public sealed class TurningBayTests : ICollectionFixture<SharedBay>
{
    public const string Name = "bay where perches are turned";
}

/// <summary>And on a fourth: pads without a car.</summary>
[Trait("needs", "bay")]
[CollectionDefinition(Name)]
public sealed class CalibrationBayTests : ICollectionFixture<SharedBay>
{
    public const string Name = "calibrating bay";
}

/// <summary>Tests that judge reaction times: no other bay of this project, and nothing loud of another, runs meanwhile.</summary>
[Trait("needs", "bay")]
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class AloneTests : ICollectionFixture<AloneBay>
{
    public const string Name = "alone";
}
