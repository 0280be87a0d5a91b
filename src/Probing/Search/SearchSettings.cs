using System.IO.Ports;

namespace ScaleLink.Probing.Search;

/// <summary>When a search sends questions. Whoever asks on a line disturbs another master that does.</summary>
internal enum Asking
{
    /// <summary>Never: it only listens.</summary>
    Never,
    /// <summary>Modbus slaves are asked on a port on which nothing at all was heard.</summary>
    WhereSilent,
    /// <summary>Modbus slaves are asked at once; nobody is listened to.</summary>
    Only,
}

/// <summary>How ports are searched.</summary>
internal sealed record SearchSettings
{
    /// <summary>How long to listen at each rate; a pad says who it is at least every 5 s.</summary>
    public TimeSpan Listening { get; init; } = TimeSpan.FromSeconds(6);

    /// <summary>Bits a second; nothing: the usual rates in turn.</summary>
    public int? Baud { get; init; }

    /// <summary>Parity bit; nothing: none, then even and odd.</summary>
    public Parity? Parity { get; init; }

    /// <summary>Whether questions are sent.</summary>
    public Asking Asking { get; init; }

    /// <summary>Addresses of the slaves that are asked, 1 to 247; none: the usual ones, then all.</summary>
    public IReadOnlyList<byte> Slaves { get; init; } = [];

    /// <summary>How long to ask for slaves on a port at most.</summary>
    public TimeSpan AskingAtMost { get; init; } = TimeSpan.FromMinutes(4);

    /// <summary>Tries rates and parities on a pseudo-terminal too: for a simulator that heeds them. Otherwise it has none.</summary>
    public bool TerminalsHaveRates { get; init; }
}

/// <summary>What a search does just now.</summary>
/// <param name="Port">On which port.</param>
/// <param name="Doing">In words, such as <c>listens at 9600 bits a second</c>.</param>
internal sealed record SearchProgress(string Port, string Doing);
