namespace ScaleLink.Daemon.Runtime;

/// <summary>The daemon's monotonic clock: nanoseconds since this run began. Every instant in the pipeline is on it.</summary>
internal sealed class BayClock
{
    // Two looks at the same instant give the same time; a clock that is put right, or wanders off, is followed all the same.
    private const long LeastChangeTicks = 50 * TimeSpan.TicksPerMillisecond;

    private readonly TimeProvider _time;
    private readonly long _start;
    private long _startTicks;

    /// <summary>Starts the clock.</summary>
    public BayClock(TimeProvider time)
    {
        (_time, _start, _startTicks) = (time, time.GetTimestamp(), time.GetUtcNow().Ticks);
        StartId = Guid.NewGuid().ToString("N")[..12];
    }

    /// <summary>Names this run: instants of two runs do not compare.</summary>
    public string StartId { get; }

    /// <summary>Nanoseconds since the run began.</summary>
    public long NowNs => _time.GetElapsedTime(_start).Ticks * TimeSpan.NanosecondsPerTick;

    /// <summary>The same instant as UTC, as the wall clock stands now: one that was wrong at the start is right once somebody has put it right.</summary>
    public DateTimeOffset ToUtc(long ns) => new(StartTicks() + ns / TimeSpan.NanosecondsPerTick, TimeSpan.Zero);

    private long StartTicks()
    {
        var known = Volatile.Read(ref _startTicks);
        var seen = _time.GetUtcNow().Ticks - _time.GetElapsedTime(_start).Ticks;
        if (Math.Abs(seen - known) < LeastChangeTicks)
            return known;
        Volatile.Write(ref _startTicks, seen);
        return seen;
    }
}
