namespace ScaleLink.Daemon.Links;

/// <summary>
/// What is said on one opened link, driven by the bytes that come and by the clock. Used once, like the link; called by one thread at a
/// time. It does no waiting of its own, so that every delay can be tried without one.
/// </summary>
internal interface IConversation
{
    /// <summary>The link is open: tells the sources so. Called once, before anything else.</summary>
    void Opened(long nowNs);

    /// <summary>Bytes came.</summary>
    void Received(ReadOnlySpan<byte> bytes, long nowNs);

    /// <summary>What to send now and when to be asked again. Asked at the start, after bytes, and at the time it has named.</summary>
    Turn Next(long nowNs);
}

/// <summary>What to send now, perhaps nothing, and when to ask again.</summary>
/// <param name="Send">Valid until the next call.</param>
/// <param name="AgainNs">The instant, ns on the daemon's clock; <see cref="Never"/> when only bytes can change anything.</param>
internal readonly record struct Turn(ReadOnlyMemory<byte> Send, long AgainNs)
{
    /// <summary>Only bytes can change anything.</summary>
    public const long Never = long.MaxValue;
}
