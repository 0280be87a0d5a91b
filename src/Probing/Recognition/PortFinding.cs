using ScaleLink.Probing.Ports;

namespace ScaleLink.Probing.Recognition;

/// <summary>What was heard on a port and made of it.</summary>
internal sealed record PortFinding
{
    /// <summary>The port, as it was asked for.</summary>
    public required string Port { get; init; }

    /// <summary>The name for the bay file: one that stays with the socket, where the system keeps one.</summary>
    public required string Link { get; init; }

    /// <summary>Bits a second at which it made sense; nothing where the port has none.</summary>
    public int? Baud { get; init; }

    /// <summary>How characters are built on the line.</summary>
    public CharacterFormat Format { get; init; } = CharacterFormat.Usual;

    /// <summary>Bytes heard at that rate.</summary>
    public int Bytes { get; init; }

    /// <summary>The beginning of it, cleaned for people.</summary>
    public IReadOnlyList<string> Heard { get; init; } = [];

    /// <summary>What was recognised, several slaves on one line each by itself; one <see cref="FoundNothing"/> when nothing was.</summary>
    public IReadOnlyList<Found> Found { get; init; } = [];

    /// <summary>Why the port could not be looked at: SL-471 not there, SL-472 not permitted, SL-473 held by another program, SL-474 no serial port, SL-475 it went away.</summary>
    public Diagnostic? Trouble { get; init; }

    /// <summary>Whether a block of the bay file can be proposed.</summary>
    public bool IsKnown => Found.Any(f => f.Protocol is not null);
}
