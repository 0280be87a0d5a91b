using ScaleLink.Protocol.Framing;

namespace ScaleLink.Protocol.PadFrames;

/// <summary>
/// Makes frames, delimiter included. Every method returns the number of bytes written, throws
/// <see cref="ArgumentException"/> for what the format cannot carry or for a destination that is too short
/// (<see cref="MaxFrameLength"/> is always enough), and allocates nothing.
/// </summary>
static class PadFrameWriter
{
    /// <summary>The longest body, kind and length bytes included.</summary>
    public const int MaxBodyLength = PadBody.MaxLength;

    /// <summary>The longest frame, delimiter included: body, one byte of stuffing, three of check, one zero.</summary>
    public const int MaxFrameLength = MaxBodyLength + 1 + FrameCheck.Length + 1;

    /// <summary>Writes a sample.</summary>
    public static int Write(in SampleFrame sample, Span<byte> destination)
    {
        Span<byte> body = stackalloc byte[MaxBodyLength];
        return WriteBody(body[..sample.WriteBody(body)], destination);
    }

    /// <summary>Writes a hello. Its version may be another than the current one.</summary>
    public static int Write(HelloFrame hello, Span<byte> destination)
    {
        ArgumentNullException.ThrowIfNull(hello);
        Span<byte> body = stackalloc byte[MaxBodyLength];
        return WriteBody(body[..hello.WriteBody(body)], destination);
    }

    /// <summary>Writes a wish to change a setting.</summary>
    public static int Write(SettingFrame setting, Span<byte> destination)
    {
        Span<byte> body = stackalloc byte[MaxBodyLength];
        return WriteBody(body[..setting.WriteBody(body)], destination);
    }

    /// <summary>Writes an acknowledgement.</summary>
    public static int Write(AckFrame ack, Span<byte> destination)
    {
        Span<byte> body = stackalloc byte[MaxBodyLength];
        return WriteBody(body[..ack.WriteBody(body)], destination);
    }

    /// <summary>Writes the host's request for a hello.</summary>
    public static int WriteAskHello(Span<byte> destination) =>
        WriteBody([(byte)FrameKind.AskHello, PadBody.MinLength], destination);

    /// <summary>
    /// Frames a body of any kind, also one that this library does not know. Byte 0 is the kind and not zero, byte 1 the
    /// body's own length, 2 to <see cref="MaxBodyLength"/>.
    /// </summary>
    public static int WriteBody(ReadOnlySpan<byte> body, Span<byte> destination)
    {
        if (body.Length is < PadBody.MinLength or > PadBody.MaxLength || body[0] == 0 || body[1] != body.Length)
            throw new ArgumentException("A body starts with its kind, not zero, and its own length.", nameof(body));
        if (destination.Length < body.Length + 1 + FrameCheck.Length + 1)
            throw new ArgumentException($"The destination is too short; {nameof(MaxFrameLength)} is enough.", nameof(destination));
        var length = Cobs.Encode(body, destination);
        FrameCheck.Write(destination[..length], destination[length..]);
        length += FrameCheck.Length;
        destination[length++] = 0;
        return length;
    }
}
