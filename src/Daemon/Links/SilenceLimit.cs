using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Links;

/// <summary>
/// Ends a link over which nothing has come for too long. A connection whose other end lost its power, and a port whose hub has renumbered it,
/// look open for ever; only opening them again shows what is there. Time during which this program itself was held up does not count.
/// </summary>
internal sealed class SilenceLimit(IConversation conversation, TimeSpan limit, string link) : IConversation
{
    private const long TickNs = Nanoseconds.PerSecond;

    private readonly long _limitNs = (long)(limit.TotalSeconds * Nanoseconds.PerSecond);
    private long _silentNs, _lastNs;

    public void Opened(long nowNs)
    {
        _lastNs = nowNs;
        conversation.Opened(nowNs);
    }

    public void Received(ReadOnlySpan<byte> bytes, long nowNs)
    {
        (_silentNs, _lastNs) = (0, nowNs);
        conversation.Received(bytes, nowNs);
    }

    /// <exception cref="LinkEndedException">Nothing has come for too long.</exception>
    public Turn Next(long nowNs)
    {
        // A late call is one of a program that was held up: the bytes wait in the system's buffers.
        _silentNs += Math.Clamp(nowNs - _lastNs, 0, 2 * TickNs);
        _lastNs = nowNs;
        if (_silentNs >= _limitNs)
            throw new LinkEndedException(LinkDiagnostics.Silent(link, limit));
        var turn = conversation.Next(nowNs);
        return turn with { AgainNs = Math.Min(turn.AgainNs, nowNs + Math.Min(TickNs, _limitNs - _silentNs)) };
    }
}
