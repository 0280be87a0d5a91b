namespace ScaleLink.Client.Demo;

/// <summary>How the demo is to be set up.</summary>
internal sealed record DemoSetup
{
    public Ports Ports { get; init; } = Ports.Default;

    /// <summary>TCP instead of pseudo-terminals; always so on Windows.</summary>
    public bool Tcp { get; init; }

    /// <summary>Seed of the simulator's chance; absent: another one each time.</summary>
    public long? Seed { get; init; }
}
