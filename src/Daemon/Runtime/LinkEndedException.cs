namespace ScaleLink.Daemon.Runtime;

/// <summary>Ends a link for good.</summary>
internal sealed class LinkEndedException(Diagnostic diagnostic, Exception? inner = null) : IOException(diagnostic.Message, inner)
{
    /// <summary>Why, and what to do next.</summary>
    public Diagnostic Diagnostic { get; } = diagnostic;
}
