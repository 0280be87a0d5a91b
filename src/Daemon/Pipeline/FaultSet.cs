using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Pipeline;

/// <summary>The faults of one pad that are in force, each with the instant it began. Not thread-safe: its pad guards it.</summary>
internal sealed class FaultSet
{
    private readonly SortedDictionary<string, Fault> _faults = new(StringComparer.Ordinal);

    public IReadOnlyList<Fault> Present => [.. _faults.Values];

    public bool Has(string code) => _faults.ContainsKey(code);

    /// <summary>True when the fault is new.</summary>
    public bool Raise(string code, string message, string mend, long nowNs)
    {
        var since = _faults.TryGetValue(code, out var old) ? old.SinceNs : nowNs;
        _faults[code] = new Fault(code, message, mend, since);
        return old is null;
    }

    /// <summary>True when it was in force.</summary>
    public bool Clear(string code) => _faults.Remove(code);

    /// <summary>Raises or clears, as <paramref name="present"/> says; true when that is a change.</summary>
    public bool Set(bool present, string code, string message, string mend, long nowNs) =>
        present ? Raise(code, message, mend, nowNs) : Clear(code);

    public void ClearAll(Predicate<string> codes)
    {
        foreach (var code in _faults.Keys.Where(c => codes(c)).ToList())
            _faults.Remove(code);
    }
}
