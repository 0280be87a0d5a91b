using ScaleLink.Daemon.Ports;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Links.Polling;

/// <summary>
/// Times of a serial line. Source of the silence between frames: MODBUS over Serial Line V1.02, 3.5 characters of 11 bits, and 1.75 ms above
/// 19 200 bits a second. It is a floor here, no measure: adapters deliver in bursts that hide it.
/// </summary>
internal sealed class LineTiming(LinkAddress address)
{
    private const int CharacterBits = 11;
    private const int FastBaud = 19200;
    private const long FastSilenceNs = 1750 * Nanoseconds.PerMicrosecond;
    // Room for an adapter to hand on what belongs together, and for a second slave to betray itself.
    private const long AdapterNs = 3 * Nanoseconds.PerMillisecond;
    // Common adapters hold bytes for up to 16 ms; a frame that has stood still for longer will not go on.
    private const long StandstillNs = 30 * Nanoseconds.PerMillisecond;

    private readonly int _baud = (address as SerialAddress)?.Baud ?? 0;

    /// <summary>From the end of a reply to the next question.</summary>
    public long GapNs => AdapterNs + (_baud is 0 or > FastBaud ? FastSilenceNs : CharactersNs(7) / 2);

    /// <summary>A reply that has begun and then not gone on for this long is broken off.</summary>
    public long BrokenOffNs => StandstillNs + CharactersNs(4);

    /// <summary>How long so many characters take on the line.</summary>
    public long CharactersNs(int characters) => _baud == 0 ? 0 : characters * CharacterBits * Nanoseconds.PerSecond / _baud;
}
