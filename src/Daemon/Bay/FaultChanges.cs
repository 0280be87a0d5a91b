namespace ScaleLink.Daemon.Bay;

/// <summary>Which faults of a pad have begun and which are over since the last look. Not thread-safe: who looks guards it.</summary>
internal sealed class FaultChanges
{
    private IReadOnlyList<Diagnostic> _before = [];

    /// <summary>Takes what is present now.</summary>
    public (IReadOnlyList<Diagnostic> Begun, IReadOnlyList<Diagnostic> Over) Take(IReadOnlyList<Diagnostic> now)
    {
        var before = _before;
        _before = now;
        return ([.. Without(now, before)], [.. Without(before, now)]);
    }

    private static IEnumerable<Diagnostic> Without(IReadOnlyList<Diagnostic> faults, IReadOnlyList<Diagnostic> others) =>
        faults.Where(f => !others.Any(o => o.Code == f.Code));
}
