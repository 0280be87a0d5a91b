namespace ScaleLink.Daemon.Runtime;

/// <summary>The daemon cannot start: what is wrong under a stable code, and the mend.</summary>
public sealed class StartException(string code, string message, string mend, Exception? inner = null) : Exception(message, inner)
{
    /// <summary>Stable code.</summary>
    public string Code { get; } = code;

    /// <summary>What to do next.</summary>
    public string Mend { get; } = mend;
}
