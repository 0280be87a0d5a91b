using static System.Buffers.Binary.BinaryPrimitives;

namespace ScaleLink.Protocol.PadFrames;

/// <summary>A pad's answer to a wish.</summary>
/// <param name="RequestId">Which wish it answers.</param>
/// <param name="Result">What became of it; numbers beyond the enumeration are carried as they are.</param>
/// <param name="Value">The value now in effect, in the setting's own unit; 0 when there is no such setting.</param>
readonly record struct AckFrame(byte RequestId, AckResult Result, int Value)
{
    const int Length = 8;

    /// <summary>Reads an answer from a whole body. False when it is not one.</summary>
    public static bool TryParse(ReadOnlySpan<byte> body, out AckFrame ack)
    {
        var good = HasShape(body);
        ack = good ? new AckFrame(body[2], (AckResult)body[3], ReadInt32LittleEndian(body[4..])) : default;
        return good;
    }

    internal static bool HasShape(ReadOnlySpan<byte> body) =>
        PadBody.StartsAs(FrameKind.Acknowledgement, body) && body.Length == Length;

    internal int WriteBody(Span<byte> body)
    {
        PadBody.Start(FrameKind.Acknowledgement, Length, body);
        body[2] = RequestId;
        body[3] = (byte)Result;
        WriteInt32LittleEndian(body[4..], Value);
        return Length;
    }
}
