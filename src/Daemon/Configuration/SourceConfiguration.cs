using System.Diagnostics.CodeAnalysis;
using System.IO.Ports;
using ScaleLink.Daemon.Ports;
using ScaleLink.Protocol.Modbus;
using ScaleLink.Protocol.TextLines;

namespace ScaleLink.Daemon.Configuration;

/// <summary>What is spoken on a link.</summary>
internal enum ProtocolKind
{
    /// <summary>The open framing of microcontroller pads.</summary>
    PadFrames,
    /// <summary>Questions to one or more slaves; the only one that several pads can share a link for.</summary>
    ModbusRtu,
    /// <summary>Lines with numbers in them.</summary>
    TextLines,
}

/// <summary>Where numbers come from: a link and what is spoken on it. A pad has one for its cells and may have another for its tilt.</summary>
internal sealed record SourceConfiguration
{
    /// <summary>Serial port or <c>tcp://host:port</c>.</summary>
    public required string Link { get; init; }

    /// <summary>Bits a second of the serial port.</summary>
    public required int Baud { get; init; }

    /// <summary>Parity bit of the serial port.</summary>
    public Parity Parity { get; init; }

    /// <summary>Data bits of a character, 7 or 8; 7 for text only.</summary>
    public int DataBits { get; init; } = 8;

    /// <summary>Stop bits behind a character, 1 or 2.</summary>
    public int StopBits { get; init; } = 1;

    /// <summary>Who reads the serial port.</summary>
    public PortReader ReadBy { get; init; }

    /// <summary>A link over which nothing comes for so long is opened again.</summary>
    public TimeSpan ReopenAfter { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>What is spoken.</summary>
    public required ProtocolKind Protocol { get; init; }

    /// <summary>With <see cref="ProtocolKind.ModbusRtu"/>.</summary>
    public ModbusConfiguration? Modbus { get; init; }

    /// <summary>With <see cref="ProtocolKind.TextLines"/>.</summary>
    public TextConfiguration? Text { get; init; }

    /// <summary>Line in the bay file, for messages.</summary>
    public int Line { get; init; }

    /// <summary>Where the link leads; <paramref name="problem"/> says what is wrong with it.</summary>
    public bool TryFind([NotNullWhen(true)] out LinkAddress? address, out string problem) =>
        LinkAddress.TryParse(Link, port => new SerialAddress(port, Baud, Parity) { DataBits = DataBits, StopBits = StopBits, ReadBy = ReadBy }, out address, out problem);
}

/// <summary>One slave, how often it is asked, how long its answer may take, and where its numbers lie.</summary>
internal sealed record ModbusConfiguration(byte Slave, double PollHz, TimeSpan ReplyTimeout, RegisterMap Map);

/// <summary>What the lines look like and what ends them: a byte, a pause, or both.</summary>
internal sealed record TextConfiguration(LinePattern Pattern, LineEnd End, TimeSpan? Pause);
