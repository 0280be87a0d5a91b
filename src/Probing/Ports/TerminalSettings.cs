using System.IO.Ports;
using System.Runtime.InteropServices;

namespace ScaleLink.Probing.Ports;

/// <summary>
/// How a serial port sends characters, as the kernel of Linux takes it (<c>struct termios2</c>): raw, any rate in bits a second.
/// A character that came with the wrong parity is read as zero, so that no protocol takes it for data.
/// </summary>
[StructLayout(LayoutKind.Sequential)]
internal unsafe struct TerminalSettings
{
    private const uint CheckParity = 0x10;
    private const uint SevenBits = 0x20, EightBits = 0x30, TwoStops = 0x40, Receiver = 0x80, WithParity = 0x100, OddParity = 0x200, IgnoreModem = 0x800, AnyRate = 0x1000;
    private const uint Sent = EightBits | TwoStops | WithParity | OddParity;
    private const int LeastToRead = 6, Letters = 19;

    private uint _input;
    private readonly uint _output;
    private uint _control;
    private readonly uint _local;
    private readonly byte _discipline;
    private fixed byte _letters[Letters];
    private uint _inputRate;
    private uint _outputRate;

    /// <summary>
    /// Without the flag that lets the handshake lines drop at closing: a board that takes such an edge as its reset would lose its readings each
    /// time that the link is opened again.
    /// </summary>
    public static TerminalSettings Of(int baud, Parity parity, int dataBits, int stopBits)
    {
        var settings = new TerminalSettings
        {
            _control = AnyRate | Receiver | IgnoreModem | (dataBits == 7 ? SevenBits : EightBits) | (stopBits == 2 ? TwoStops : 0)
                | parity switch { Parity.Even => WithParity, Parity.Odd => WithParity | OddParity, _ => 0 },
            _input = parity == Parity.None ? 0 : CheckParity,
            _inputRate = (uint)baud,
            _outputRate = (uint)baud,
        };
        settings._letters[LeastToRead] = 1;
        return settings;
    }

    /// <summary>Whether characters are sent alike; rates are not compared, since a driver takes the nearest that its crystal gives.</summary>
    public readonly bool SendsAs(TerminalSettings other) => (_control & Sent) == (other._control & Sent);
}
