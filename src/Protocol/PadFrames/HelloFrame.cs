using System.Diagnostics.CodeAnalysis;
using System.Text;
using static System.Buffers.Binary.BinaryPrimitives;

namespace ScaleLink.Protocol.PadFrames;

/// <summary>
/// What a pad says it is. Later versions of the format may add bytes behind the firmware text but move nothing before it,
/// so that a host can name the pad whose version it has to refuse. Ranges are promised for the current version only.
/// </summary>
sealed record HelloFrame
{
    /// <summary>The version of the format that this library speaks.</summary>
    public const byte CurrentVersion = 1;

    const int TextStart = 25;

    /// <summary>The version of the format that the pad speaks.</summary>
    public byte Version { get; init; } = CurrentVersion;

    /// <summary>Differs at each start of the pad.</summary>
    public required uint BootId { get; init; }

    /// <summary>Load cells in the pad, 1 to 8.</summary>
    public required byte Cells { get; init; }

    /// <summary>Samples a second times 1000, at least 1.</summary>
    public required uint SampleRateMillihertz { get; init; }

    /// <summary>What the whole pad may carry, g, at least 1.</summary>
    public required uint CapacityGrams { get; init; }

    /// <summary>The lowest count a converter can give; at it, the cell is out of range.</summary>
    public required int LowestCount { get; init; }

    /// <summary>The highest count a converter can give, above the lowest.</summary>
    public required int HighestCount { get; init; }

    /// <summary>What the pad can do beyond counting. Undefined bits are cleared when read.</summary>
    public PadFeatures Features { get; init; }

    /// <summary>The pad's own serial number, 1 to 32 printable ASCII characters.</summary>
    public required string SerialNumber { get; init; }

    /// <summary>The firmware's name and version, 0 to 32 printable ASCII characters.</summary>
    public string Firmware { get; init; } = "";

    /// <summary>Whether this library may read the pad's samples.</summary>
    public bool IsSupported => Version == CurrentVersion;

    /// <summary>Reads a hello of any version from a whole body. False when it is not one.</summary>
    public static bool TryParse(ReadOnlySpan<byte> body, [NotNullWhen(true)] out HelloFrame? hello)
    {
        hello = HasShape(body) ? Read(body) : null;
        return hello is not null;
    }

    internal static bool HasShape(ReadOnlySpan<byte> body)
    {
        if (!PadBody.StartsAs(FrameKind.Hello, body) || body.Length <= TextStart)
            return false;
        if (!HelloText.TryRead(body[TextStart..], HelloText.MinSerialNumber, out _, out var rest)
            || !HelloText.TryRead(rest, HelloText.MinFirmware, out _, out rest))
            return false;
        return body[2] != CurrentVersion || (rest.IsEmpty && HasRanges(body));
    }

    static bool HasRanges(ReadOnlySpan<byte> body) =>
        body[7] is >= 1 and <= PadBody.MaxCells
        && ReadUInt32LittleEndian(body[8..]) > 0
        && ReadUInt32LittleEndian(body[12..]) > 0
        && ReadInt32LittleEndian(body[16..]) < ReadInt32LittleEndian(body[20..]);

    static HelloFrame Read(ReadOnlySpan<byte> body)
    {
        HelloText.TryRead(body[TextStart..], HelloText.MinSerialNumber, out var serialNumber, out var rest);
        HelloText.TryRead(rest, HelloText.MinFirmware, out var firmware, out _);
        return new HelloFrame
        {
            Version = body[2],
            BootId = ReadUInt32LittleEndian(body[3..]),
            Cells = body[7],
            SampleRateMillihertz = ReadUInt32LittleEndian(body[8..]),
            CapacityGrams = ReadUInt32LittleEndian(body[12..]),
            LowestCount = ReadInt32LittleEndian(body[16..]),
            HighestCount = ReadInt32LittleEndian(body[20..]),
            Features = (PadFeatures)body[24] & PadFeatures.Defined,
            SerialNumber = Encoding.ASCII.GetString(serialNumber),
            Firmware = Encoding.ASCII.GetString(firmware),
        };
    }

    internal int WriteBody(Span<byte> body)
    {
        body[2] = Version;
        WriteUInt32LittleEndian(body[3..], BootId);
        body[7] = Cells;
        WriteUInt32LittleEndian(body[8..], SampleRateMillihertz);
        WriteUInt32LittleEndian(body[12..], CapacityGrams);
        WriteInt32LittleEndian(body[16..], LowestCount);
        WriteInt32LittleEndian(body[20..], HighestCount);
        body[24] = (byte)Features;
        if (!HasRanges(body) || (Features & ~PadFeatures.Defined) != 0)
            throw new ArgumentException(
                $"A hello needs 1 to {PadBody.MaxCells} cells, a rate and a capacity above zero, a lowest count below the highest, and defined features only: {this}");
        var length = TextStart;
        length += HelloText.Write(SerialNumber, HelloText.MinSerialNumber, nameof(SerialNumber), body[length..]);
        length += HelloText.Write(Firmware, HelloText.MinFirmware, nameof(Firmware), body[length..]);
        PadBody.Start(FrameKind.Hello, length, body);
        return length;
    }
}
