using Shared.Rig;

namespace Timing.Tests;

/// <summary>A car settled on exact pads, for those who leave it so.</summary>
public sealed class SettledBay : IDisposable
{
    private readonly Lazy<BayRig> _rig = new(Start);

    internal BayRig Rig => _rig.Value;

    public void Dispose()
    {
        if (_rig.IsValueCreated)
            _rig.Value.Dispose();
    }

    private static BayRig Start()
    {
        var rig = new BayRig();
        rig.PutCarOn();
        rig.Settled();
        return rig;
    }
}
