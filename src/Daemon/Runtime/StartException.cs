namespace ScaleLink.Daemon.Runtime;

/// <summary>The daemon cannot start.</summary>
internal sealed class StartException(Code code, Sentence message, Sentence remedy, Exception? inner = null) : Exception(message, inner)
{
    /// <summary>Why, and what to do next.</summary>
    public Diagnostic Diagnostic { get; } = new(code, message, remedy);
}
