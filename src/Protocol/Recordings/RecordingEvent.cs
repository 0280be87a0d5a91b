namespace ScaleLink.Protocol.Recordings;

/// <summary>One line of a link recording.</summary>
/// <param name="AtNs">When, ns on the recorder's monotonic clock.</param>
/// <param name="Kind">What.</param>
/// <param name="Bytes">With <see cref="RecordingEventKind.Received"/> and <see cref="RecordingEventKind.Sent"/>.</param>
/// <param name="Text">With all others; printable, one line.</param>
sealed record RecordingEvent(long AtNs, RecordingEventKind Kind, ReadOnlyMemory<byte> Bytes, string Text = "")
{
    /// <summary>Whether the event carries bytes.</summary>
    public bool HasBytes => Kind is RecordingEventKind.Received or RecordingEventKind.Sent;
}
