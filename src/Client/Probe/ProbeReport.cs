namespace ScaleLink.Client.Probe;

/// <summary>What was heard on a port and made of it.</summary>
internal sealed record ProbeReport
{
    public required string Port { get; init; }
    /// <summary>Bits a second at which it made sense; nothing where the port has none.</summary>
    public required int? Baud { get; init; }
    /// <summary>How characters are built on the line.</summary>
    public required CharacterFormat Format { get; init; }
    /// <summary>Bytes heard at that rate.</summary>
    public required int Bytes { get; init; }
    /// <summary>The beginning of it, cleaned.</summary>
    public required IReadOnlyList<string> Heard { get; init; }
    public required Guess Guess { get; init; }
    /// <summary>A [[pads]] block for the bay file; nothing when nothing is known.</summary>
    public required string? Proposal { get; init; }
}
