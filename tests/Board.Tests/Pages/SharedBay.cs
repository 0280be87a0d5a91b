using Shared.Rig;

namespace Board.Tests.Pages;

/// <summary>One bay and one browser for all tests of the page; every test leaves the car settled on live pads.</summary>
public sealed class SharedBay : IAsyncLifetime
{
    private BayRig? _rig;
    private Chromium? _chromium;

    internal BayRig Rig => _rig!;

    public async ValueTask InitializeAsync()
    {
        _chromium = await Chromium.Start();
        _rig = new BayRig("noise,quantisation,dead-load,offset,clock-offset,clock-drift,latency-batches");
        _rig.PutCarOn();
        _rig.Settled();
    }

    /// <summary>A board of its own: no memory of the others.</summary>
    internal Task<BoardPage> Open(PageSetup? setup = null) => BoardPage.Open(_chromium!.Browser, Rig.PagePort, setup ?? new PageSetup());

    public async ValueTask DisposeAsync()
    {
        _rig?.Dispose();
        if (_chromium is not null)
            await _chromium.DisposeAsync();
    }
}

/// <summary>Tests that use <see cref="SharedBay"/>, one after the other.</summary>
[CollectionDefinition(Name)]
public sealed class SharedBayTests : ICollectionFixture<SharedBay>
{
    public const string Name = "shared bay";
}
