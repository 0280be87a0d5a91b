namespace ScaleLink.Measure.Diagnostics;

/// <summary>What was asked for cannot be done on the input given. Every reason is listed, not only the first.</summary>
public sealed class DiagnosticException : Exception
{
    /// <summary>For these reasons; at least one.</summary>
    public DiagnosticException(params IReadOnlyList<Diagnostic> diagnostics)
        : base(string.Join(Environment.NewLine, diagnostics)) => Diagnostics = diagnostics;

    /// <summary>All the reasons.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }
}
