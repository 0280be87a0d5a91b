namespace ScaleLink.Daemon.Hosting;

/// <summary>What the command line says; it goes before the bay file.</summary>
internal sealed record StartOptions
{
    public required string BayFile { get; init; }
    public int? PagePort { get; init; }
    public int? GrpcPort { get; init; }
    public int? MqttPort { get; init; }
    public bool AllowMissing { get; init; }
    public bool CheckOnly { get; init; }
    public string? TakeOverBy { get; init; }
    public bool ExitWithStdin { get; init; }
}
