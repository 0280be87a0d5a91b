namespace ScaleLink.Daemon.Bay;

/// <summary>The faults of one pad that are in effect, each with the instant it began. Not thread-safe: its pad guards it.</summary>
internal sealed class FaultSet
{
    private readonly SortedDictionary<string, Diagnostic> _faults = new(StringComparer.Ordinal);

    public IReadOnlyList<Diagnostic> Present => [.. _faults.Values];

    public bool Has(Code code) => _faults.ContainsKey(code.Text);

    /// <summary>True when the fault is new.</summary>
    public bool Raise(Code code, Sentence message, Sentence remedy, long nowNs)
    {
        var since = _faults.TryGetValue(code.Text, out var old) ? old.SinceNs : nowNs;
        _faults[code.Text] = new Diagnostic(code, message, remedy) { SinceNs = since };
        return old is null;
    }

    /// <summary>True when it was in effect.</summary>
    public bool Clear(Code code) => _faults.Remove(code.Text);

    /// <summary>Raises or clears, as <paramref name="present"/> says; true when that is a change.</summary>
    public bool Set(bool present, Code code, Sentence message, Sentence remedy, long nowNs) =>
        present ? Raise(code, message, remedy, nowNs) : Clear(code);

    public void ClearAll(Predicate<Code> codes)
    {
        foreach (var fault in _faults.Values.Where(f => codes(f.Code)).ToList())
            _faults.Remove(fault.Code.Text);
    }
}
