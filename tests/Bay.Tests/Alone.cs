using Shared;
using Shared.Rig;

namespace Bay.Tests;

/// <summary>Tests that judge reaction times or losses: no other bay of this project, and nothing loud of another, runs meanwhile. All others run beside each other; they mostly wait for a car to settle.</summary>
[Trait("needs", "bay")]
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class Alone : ICollectionFixture<AloneBay>
{
    public const string Name = "alone";
}

/// <summary>The machine when all that is loud is over; and a car settled on exact pads for those who ask for it, who leave it so.</summary>
public sealed class AloneBay : IDisposable
{
    private readonly Lazy<BayRig> _rig = new(Start);

    public AloneBay(MachineTime machine) => machine.Quiet();

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
