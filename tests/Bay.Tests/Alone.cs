using Shared;
using Shared.Rig;

namespace Bay.Tests;

/// <summary>Tests that judge reaction times or losses: no other bay, and no other test project, runs meanwhile. All others run beside each other; they mostly wait for a car to settle.</summary>
[Trait("needs", "bay")]
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class Alone : ICollectionFixture<AloneBay>
{
    public const string Name = "alone";
}

/// <summary>The machine to itself; and a car settled on exact pads for those who ask for it, who leave it so.</summary>
public sealed class AloneBay : IDisposable
{
    private readonly Lazy<BayRig> _rig = new(Start);

    public AloneBay(MachineTime machine) => machine.Alone();

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
