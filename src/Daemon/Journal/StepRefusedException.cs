namespace ScaleLink.Daemon.Journal;

/// <summary>A step of a workflow that was not taken. Nothing of it is in the ledger, and the state is as it was.</summary>
internal sealed class StepRefusedException : Exception
{
    /// <summary>For every reason at once; the first one names the whole.</summary>
    public StepRefusedException(params IReadOnlyList<Diagnostic> diagnostics)
        : base(string.Join(' ', diagnostics ?? [])) => Diagnostics = diagnostics ?? [];

    /// <summary>For one reason.</summary>
    public StepRefusedException(Code code, Sentence message, Sentence remedy, Exception? inner = null)
        : base(message, inner) => Diagnostics = [new(code, message, remedy)];

    /// <summary>Why, at least one.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }

    /// <summary>The reason that names the whole.</summary>
    public Diagnostic Diagnostic => Diagnostics[0];
}
