using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Bay;

/// <summary>
/// Whether a source loses more than a rare message, to damage or on the way. Two within ten seconds, and at least 1 in 200, raise it; three
/// seconds without any end it.
/// </summary>
internal sealed class DamageWatch(string what)
{
    private const long StepNs = 250 * Nanoseconds.PerMillisecond;
    private const int Steps = 40;
    private const int CleanSteps = 12;
    private const int FewestBad = 2;
    private const double LeastShare = 0.005;

    private readonly Queue<(long Bad, long Good)> _steps = new();
    private (long Bad, long Good)? _last;
    private long _nextNs;
    private int _clean;

    /// <summary>It is raised.</summary>
    public bool IsBad { get; private set; }

    /// <summary>A new link: what went before says nothing of it.</summary>
    public void Restart()
    {
        _steps.Clear();
        (_last, IsBad, _clean) = (null, false, 0);
    }

    /// <summary>Takes the totals so far; gives the state when it begins, lasts with new numbers, or ends.</summary>
    public (bool IsBad, string Message)? Tick(long badSoFar, long goodSoFar, long nowNs)
    {
        if (nowNs < _nextNs)
            return null;
        _nextNs = nowNs + StepNs;
        if (_last is not { } last)
        {
            _last = (badSoFar, goodSoFar);
            return null;
        }

        _last = (badSoFar, goodSoFar);
        var bad = badSoFar - last.Bad;
        _steps.Enqueue((bad, goodSoFar - last.Good));
        if (_steps.Count > Steps)
            _steps.Dequeue();
        _clean = bad == 0 ? _clean + 1 : 0;
        return Judge();
    }

    private (bool, string)? Judge()
    {
        var (bad, good) = (_steps.Sum(s => s.Bad), _steps.Sum(s => s.Good));
        if (IsBad && _clean >= CleanSteps)
        {
            _steps.Clear();
            IsBad = false;
            return (false, "");
        }

        IsBad |= bad >= FewestBad && bad >= LeastShare * (bad + good);
        return IsBad ? (true, $"{bad} of the last {bad + good} {what}") : null;
    }
}
