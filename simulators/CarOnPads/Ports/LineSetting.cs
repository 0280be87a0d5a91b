using System.Globalization;
using CarOnPads.Runtime;

namespace CarOnPads.Ports;

/// <summary>The parity bit of a character.</summary>
enum LineParity
{
    None,
    Even,
    Odd,
}

/// <summary>How a device sends characters: 8 data bits, one stop bit.</summary>
/// <param name="Baud">Bits a second.</param>
/// <param name="Parity">The parity bit.</param>
readonly record struct LineSetting(int Baud, LineParity Parity)
{
    const int Slowest = 1200, Fastest = 921600;
    const int StartDataStop = 10;

    /// <summary>Bits of a character on the line.</summary>
    public int BitsOfCharacter => StartDataStop + (Parity == LineParity.None ? 0 : 1);

    /// <summary>Such as <c>9600/even</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Baud}/{Parity.ToString().ToLowerInvariant()}");

    /// <summary>From <c>LF=9600/even,BUS=19200/none</c>: the ports that are named heed what their reader has set, the others do not.</summary>
    /// <exception cref="SimulatorException">CP-105 no such rate or parity; CP-107 no such port.</exception>
    public static IReadOnlyDictionary<string, LineSetting> Parse(string text, IReadOnlyCollection<string> ports)
    {
        Dictionary<string, LineSetting> settings = [];
        foreach (var part in text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (part.Split('=') is not [var port, var setting] || setting.Split('/') is not [var baud, var parity]
                || !int.TryParse(baud, NumberStyles.None, CultureInfo.InvariantCulture, out var rate) || rate is < Slowest or > Fastest
                || parity.Any(c => !char.IsAsciiLetter(c)) || !Enum.TryParse<LineParity>(parity, ignoreCase: true, out var bit))
                throw new SimulatorException("CP-105", $"--line: {part} is no port with a rate and a parity.", $"Write LF=9600/even: {Slowest} to {Fastest} bits a second; none, even or odd.");
            if (!ports.Contains(port))
                throw new SimulatorException("CP-107", $"--line: there is no port {port}.", $"The ports are {string.Join(", ", ports)}: pads that speak Modbus share BUS.");
            settings[port] = new LineSetting(rate, bit);
        }

        return settings;
    }
}
