using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Links;

/// <summary>
/// Lets a conversation speak on its link. The link's thread brings the bytes; a second thread, started only when the conversation names a
/// time, wakes it when that has come. One lock keeps the two apart.
/// </summary>
internal sealed class LinkPump(ILink link, IConversation conversation, BayClock clock, string name) : IDisposable
{
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(10);

    private readonly Lock _gate = new();
    private readonly AutoResetEvent _changed = new(initialState: false);
    private Thread? _timekeeper;
    private long _againNs = Turn.Never;
    private volatile bool _isOver;

    /// <summary>What ended the second thread, when something did: the cause of the hang-up that the first one sees.</summary>
    public Exception? Failure { get; private set; }

    /// <summary>Lets the conversation begin.</summary>
    public void Begin()
    {
        lock (_gate)
        {
            conversation.Opened(clock.NowNs);
            Beat();
        }
    }

    /// <summary>Hands on bytes that came now.</summary>
    public void Received(ReadOnlySpan<byte> bytes)
    {
        lock (_gate)
        {
            conversation.Received(bytes, clock.NowNs);
            Beat();
        }
    }

    /// <summary>Ends the second thread.</summary>
    public void Dispose()
    {
        _isOver = true;
        _changed.Set();
        _timekeeper?.Join();
        _changed.Dispose();
    }

    private void Beat()
    {
        var turn = conversation.Next(clock.NowNs);
        if (!turn.Send.IsEmpty)
            link.Write(turn.Send.Span);
        var isSooner = turn.AgainNs < _againNs;
        Volatile.Write(ref _againNs, turn.AgainNs);
        // Whoever waits for less finds out by himself that it has become later: with every sample it does.
        if (!isSooner)
            return;
        if (_timekeeper is null)
        {
            _timekeeper = new Thread(KeepTime) { IsBackground = true, Name = $"time {name}" };
            _timekeeper.Start();
        }

        _changed.Set();
    }

    private void KeepTime()
    {
        while (!_isOver)
        {
            var again = Volatile.Read(ref _againNs);
            var left = again - clock.NowNs;
            if (left > 0)
            {
                _changed.WaitOne(again == Turn.Never ? LongestWait : Shorter(left));
                continue;
            }

            try
            {
                lock (_gate)
                    Beat();
            }
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                // Ends the pending read of the link's own thread, which has the say over what happens next.
                Failure = e;
                link.Dispose();
                return;
            }
        }
    }

    // Rounded up to the system's tick, or the last part of a millisecond would be spent spinning.
    private static TimeSpan Shorter(long ns) =>
        TimeSpan.FromMilliseconds(Math.Min(Math.Ceiling(ns / (double)Nanoseconds.PerMillisecond), LongestWait.TotalMilliseconds));
}
