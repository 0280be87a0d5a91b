using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Ports;

namespace ScaleLink.Daemon.Recording;

/// <summary>A link, who is on it, and its tape.</summary>
internal sealed record RecordedLink(LinkAddress Address, IReadOnlyList<RecordedSource> Sources, LinkTape Tape)
{
    /// <summary>Short enough for a file name: the corners on it.</summary>
    public string ShortName => string.Join('+', Sources.Select(s => s.IsTilt ? $"{s.Pad.Corner}-tilt" : $"{s.Pad.Corner}"));

    /// <summary>As the bay file names the protocol.</summary>
    public string Protocol => SourceReader.NameOf(Sources[0].Source.Protocol);

    /// <summary>How characters are sent on a serial port.</summary>
    public string Line => (Address as SerialAddress)?.Line ?? "";

    /// <summary>Each source with what it has said of itself.</summary>
    public IReadOnlyList<string> Devices => [.. Sources.Select(s => s.Describe())];
}

/// <summary>The loads or the tilt of a pad, as one link carries them.</summary>
internal sealed record RecordedSource(PadChannel Pad, SourceConfiguration Source)
{
    public bool IsTilt => ReferenceEquals(Source, Pad.Configuration.Tilt);

    public string Describe()
    {
        var (slave, identity) = (Source.Modbus is { } modbus ? $" slave {modbus.Slave}" : "", IsTilt ? null : Pad.Snapshot().Identity);
        var self = identity is null ? "" : $" serial number {identity.SerialNumber}" + (identity.Firmware.Length > 0 ? $" firmware {identity.Firmware}" : "");
        return $"{Pad.Corner}{(IsTilt ? " tilt" : "")}{slave}{self}";
    }
}
