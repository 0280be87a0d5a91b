using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Links;

/// <summary>A pad that speaks by itself: it is greeted, and then only listened to. One that nobody knows (any more) is greeted again.</summary>
internal sealed class ListeningConversation(IPadProtocol protocol, IPadSource source) : IConversation
{
    private const long GreetAgainNs = 500 * Nanoseconds.PerMillisecond;

    private readonly ReceiveBuffer _buffer = new();
    private readonly long? _pauseNs = protocol.Pause is { } pause ? pause.Ticks * TimeSpan.NanosecondsPerTick : null;
    private long _greetAgainNs = long.MinValue;
    private long _lastByteNs;
    private bool _isPaused = true;

    public void Opened(long nowNs) => source.LinkOpened(() => protocol.Counters);

    public void Received(ReadOnlySpan<byte> bytes, long nowNs)
    {
        source.Received(bytes.Length);
        Pause(nowNs);
        _buffer.Add(bytes);
        _buffer.Drain(all => protocol.Decode(all, nowNs, source));
        (_lastByteNs, _isPaused) = (nowNs, false);
    }

    public Turn Next(long nowNs)
    {
        Pause(nowNs);
        var greets = _greetAgainNs == long.MinValue || nowNs >= _greetAgainNs && source.IsUnknown;
        if (greets)
            _greetAgainNs = nowNs + GreetAgainNs;
        return new Turn(greets ? protocol.Greeting : default, _pauseNs is { } pause && !_isPaused ? _lastByteNs + pause : Turn.Never);
    }

    private void Pause(long nowNs)
    {
        if (_isPaused || _pauseNs is not { } pause || nowNs - _lastByteNs < pause)
            return;
        _isPaused = true;
        _buffer.Drain(all =>
        {
            protocol.Finish(all, _lastByteNs, source);
            return all.End;
        });
    }
}
