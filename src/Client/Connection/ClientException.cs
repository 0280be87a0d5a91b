namespace ScaleLink.Client.Connection;

/// <summary>Raised for a <see cref="Diagnostic"/> that stops what was asked for.</summary>
public sealed class ClientException(Diagnostic diagnostic, Exception? inner = null) : Exception(diagnostic?.ToString(), inner)
{
    /// <summary>What is wrong, and what to do next.</summary>
    public Diagnostic Diagnostic { get; } = diagnostic ?? throw new ArgumentNullException(nameof(diagnostic));
}
