namespace ScaleLink.Protocol.PadFrames;

/// <summary>What every body has in common: kind, length, and a shape that belongs to the kind.</summary>
static class PadBody
{
    public const int MinLength = 2;

    /// <summary>At this length COBS always adds exactly one byte, and a pad needs no case for runs of 254.</summary>
    public const int MaxLength = 253;

    public const int MaxCells = 8;

    public static bool IsKnown(FrameKind kind) =>
        kind is FrameKind.Hello or FrameKind.Sample or FrameKind.AskHello or FrameKind.Set or FrameKind.Acknowledgement;

    /// <summary>Whether a body of a known kind can be parsed.</summary>
    public static bool HasShape(FrameKind kind, ReadOnlySpan<byte> body) => kind switch
    {
        FrameKind.Sample => SampleFrame.HasShape(body),
        FrameKind.Hello => HelloFrame.HasShape(body),
        FrameKind.AskHello => body.Length == MinLength,
        FrameKind.Set => SettingFrame.HasShape(body),
        FrameKind.Acknowledgement => AckFrame.HasShape(body),
        _ => false,
    };

    public static bool StartsAs(FrameKind kind, ReadOnlySpan<byte> body) =>
        body.Length >= MinLength && body[0] == (byte)kind && body[1] == body.Length;

    public static void Start(FrameKind kind, int length, Span<byte> body)
    {
        body[0] = (byte)kind;
        body[1] = (byte)length;
    }
}
