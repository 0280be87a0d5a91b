namespace ScaleLink.Protocol.Captures;

/// <summary>One line of a capture.</summary>
/// <param name="AtNs">When, ns on the recorder's monotonic clock.</param>
/// <param name="Kind">What.</param>
/// <param name="Bytes">With <see cref="CaptureEventKind.Received"/> and <see cref="CaptureEventKind.Sent"/>.</param>
/// <param name="Text">With all others; printable, one line.</param>
public sealed record CaptureEvent(long AtNs, CaptureEventKind Kind, ReadOnlyMemory<byte> Bytes, string Text = "")
{
    /// <summary>Whether the event carries bytes.</summary>
    public bool HasBytes => Kind is CaptureEventKind.Received or CaptureEventKind.Sent;
}
