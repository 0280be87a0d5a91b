namespace ScaleLink.Protocol.PadFrames;

/// <summary>A frame whose check, length and shape are good. Valid until the decoder is asked for the next one.</summary>
/// <param name="kind">What the frame is for.</param>
/// <param name="body">The whole body, kind and length bytes included.</param>
/// <param name="offset">Position of the frame's first byte in the stream since the decoder was made.</param>
readonly ref struct PadFrame(FrameKind kind, ReadOnlySpan<byte> body, long offset)
{
    /// <summary>What the frame is for.</summary>
    public FrameKind Kind { get; } = kind;

    /// <summary>The whole body, kind and length bytes included.</summary>
    public ReadOnlySpan<byte> Body { get; } = body;

    /// <summary>Position of the frame's first byte in the stream since the decoder was made.</summary>
    public long Offset { get; } = offset;
}
