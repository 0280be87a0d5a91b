namespace CarOnPads.Runtime;

/// <summary>An error that a person can remedy.</summary>
/// <param name="code">Stable, CP-1xx files, CP-2xx commands, CP-3xx ports.</param>
/// <param name="message">What is wrong.</param>
/// <param name="remedy">What to do next.</param>
sealed class SimulatorException(string code, string message, string remedy) : Exception(message)
{
    /// <summary>Stable code.</summary>
    public string Code { get; } = code;

    /// <summary>What to do next.</summary>
    public string Remedy { get; } = remedy;
}
