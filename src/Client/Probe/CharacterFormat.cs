using System.IO.Ports;

namespace ScaleLink.Client.Probe;

/// <summary>How the characters on a line are built.</summary>
internal sealed record CharacterFormat(Parity Parity = Parity.None, int DataBits = 8, int StopBits = 1)
{
    /// <summary>What most devices are set to.</summary>
    public static CharacterFormat Usual { get; } = new();

    /// <summary>Lines of the bay file; only what differs from its defaults.</summary>
    public IEnumerable<string> Keys
    {
        get
        {
            if (Parity != Usual.Parity)
                yield return $"parity = {TomlText.Quoted(Parity.ToString().ToLowerInvariant())}";
            if (DataBits != Usual.DataBits)
                yield return $"data_bits = {DataBits}";
            if (StopBits != Usual.StopBits)
                yield return $"stop_bits = {StopBits}";
        }
    }

    /// <summary>For people: only what is unusual; empty when nothing is.</summary>
    public string Words => this == Usual ? "" : $"{DataBits} data bits, {(Parity == Parity.None ? "no" : Parity.ToString().ToLowerInvariant())} parity, {StopBits} stop bit{(StopBits == 1 ? "" : "s")}";
}
