namespace ScaleLink.Daemon.Runtime;

/// <summary>The daemon's monotonic clock: nanoseconds since this run began. Every instant in the pipeline is on it.</summary>
internal sealed class BayClock
{
    private readonly TimeProvider _time;
    private readonly long _start;
    private readonly DateTimeOffset _startUtc;

    /// <summary>Starts the clock.</summary>
    public BayClock(TimeProvider time)
    {
        (_time, _start, _startUtc) = (time, time.GetTimestamp(), time.GetUtcNow());
        StartId = Guid.NewGuid().ToString("N")[..12];
    }

    /// <summary>Names this run: instants of two runs do not compare.</summary>
    public string StartId { get; }

    /// <summary>Nanoseconds since the run began.</summary>
    public long NowNs => _time.GetElapsedTime(_start).Ticks * TimeSpan.NanosecondsPerTick;

    /// <summary>The same instant as UTC, as the wall clock stood when the run began: it never jumps.</summary>
    public DateTimeOffset ToUtc(long ns) => _startUtc.AddTicks(ns / TimeSpan.NanosecondsPerTick);
}
