using System.IO.Ports;

namespace ScaleLink.Probing.Ports;

/// <summary>How the characters on a line are built.</summary>
internal sealed record CharacterFormat(Parity Parity = Parity.None, int DataBits = 8, int StopBits = 1)
{
    /// <summary>What most devices are set to.</summary>
    public static CharacterFormat Usual { get; } = new();

    /// <summary>For people: only what is unusual; empty when nothing is.</summary>
    public string Words => this == Usual ? "" : $"{DataBits} data bits, {(Parity == Parity.None ? "no" : Parity.ToString().ToLowerInvariant())} parity, {StopBits} stop bit{(StopBits == 1 ? "" : "s")}";
}
