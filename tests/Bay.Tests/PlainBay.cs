using Shared.Rig;

namespace Bay.Tests;

/// <summary>Empty pads without a zero, for tests that ask and change nothing, or put back what they change.</summary>
public sealed class PlainBay : IDisposable
{
    public PlainBay() => Rig.WaitLive();

    internal BayRig Rig { get; } = new();

    public void Dispose() => Rig.Dispose();
}

/// <summary>Test classes that share it.</summary>
[Trait("needs", "bay")]
[CollectionDefinition(Name)]
public sealed class PlainCollection : ICollectionFixture<PlainBay>
{
    public const string Name = "plain";
}
