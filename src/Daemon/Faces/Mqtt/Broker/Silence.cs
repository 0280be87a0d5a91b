namespace ScaleLink.Daemon.Faces.Mqtt.Broker;

/// <summary>
/// How long a client has said nothing, by the monotonic clock: the library goes by the wall clock, and one that steps would throw every client out.
/// Bytes that wait to be read are not silence: it is the daemon that was held up.
/// </summary>
internal sealed class Silence : IDisposable
{
    private readonly Lock _gate = new();
    private readonly Func<bool> _hasUnread;
    private readonly Action _ended;
    private readonly ITimer _timer;
    private TimeSpan _limit = Timeout.InfiniteTimeSpan;

    /// <param name="time">Whose timers run.</param>
    /// <param name="hasUnread">Whether something waits to be read.</param>
    /// <param name="ended">Called when the silence has lasted too long.</param>
    public Silence(TimeProvider time, Func<bool> hasUnread, Action ended)
    {
        (_hasUnread, _ended) = (hasUnread, ended);
        _timer = time.CreateTimer(_ => Judge(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <summary>From now on so much silence is allowed; <see cref="Timeout.InfiniteTimeSpan"/>: any.</summary>
    public void Allow(TimeSpan limit)
    {
        lock (_gate)
            _limit = limit;
        Heard();
    }

    /// <summary>A packet has come.</summary>
    public void Heard()
    {
        lock (_gate)
            _timer.Change(_limit, Timeout.InfiniteTimeSpan);
    }

    public void Dispose() => _timer.Dispose();

    private void Judge()
    {
        if (_hasUnread())
            Heard();
        else
            _ended();
    }
}
