using ScaleLink.Protocol.Framing;
using static System.Buffers.Binary.BinaryPrimitives;

namespace ScaleLink.Protocol.Modbus;

/// <summary>The CRC in the last two bytes of a frame, low byte first.</summary>
static class RtuCheck
{
    public const int Length = 2;

    public static void Write(Span<byte> frame) => WriteUInt16LittleEndian(frame[^Length..], Crc16.Modbus(frame[..^Length]));

    public static bool IsGood(ReadOnlySpan<byte> frame) =>
        frame.Length > Length && ReadUInt16LittleEndian(frame[^Length..]) == Crc16.Modbus(frame[..^Length]);
}
