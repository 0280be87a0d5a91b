using ScaleLink.Daemon.Bay;

namespace ScaleLink.Daemon.Hosting;

/// <summary>
/// The lines of the log about the faults of one pad or link: the first time at once, with its end. A fault that comes and goes is told less and less often, with how
/// often it came meanwhile; one that stayed away for ten minutes counts as new.
/// </summary>
internal sealed class FaultLines(string name, TimeProvider time, ILogger log)
{
    private static readonly TimeSpan FirstPause = TimeSpan.FromMinutes(2);
    private static readonly TimeSpan Forgotten = TimeSpan.FromMinutes(10);

    private readonly Lock _gate = new();
    private readonly FaultChanges _changes = new();
    private readonly Dictionary<string, Line> _lines = new(StringComparer.Ordinal);

    /// <summary>Tells what has changed since the last look.</summary>
    public void Look(IReadOnlyList<Diagnostic> present)
    {
        lock (_gate)
        {
            var (begun, over) = _changes.Take(present);
            foreach (var fault in begun)
                Begin(fault);
            foreach (var fault in over)
                End(fault.Code, _lines[fault.Code.Text]);
        }
    }

    private void Begin(Diagnostic fault)
    {
        var now = time.GetTimestamp();
        if (!_lines.TryGetValue(fault.Code.Text, out var line) || time.GetElapsedTime(line.OverAt, now) > Forgotten)
            _lines[fault.Code.Text] = line = new Line();
        line.IsTold = line.Pause == TimeSpan.Zero || time.GetElapsedTime(line.ToldAt, now) >= line.Pause;
        if (!line.IsTold)
        {
            line.Untold++;
            return;
        }

        log.LogWarning("{Name}: {Diagnostic}{Again}", name, fault, line.Untold > 0 ? $" It came and went {line.Untold} times more since the last line." : "");
        (line.ToldAt, line.Untold) = (now, 0);
        line.Pause = line.Pause == TimeSpan.Zero ? FirstPause : line.Pause * 2;
    }

    private void End(Code code, Line line)
    {
        line.OverAt = time.GetTimestamp();
        if (line.IsTold)
            log.LogInformation("{Name}: {Code} is over", name, code);
    }

    private sealed class Line
    {
        public bool IsTold { get; set; }

        public long ToldAt { get; set; }

        public long OverAt { get; set; }

        public int Untold { get; set; }

        public TimeSpan Pause { get; set; }
    }
}
