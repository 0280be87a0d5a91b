namespace ScaleLink.Probing.Ports;

/// <summary>Raised when a port cannot be opened, or went away.</summary>
internal sealed class PortException(Diagnostic diagnostic, Exception? inner = null) : Exception(diagnostic.ToString(), inner)
{
    /// <summary>What is wrong, and what to do next.</summary>
    public Diagnostic Diagnostic { get; } = diagnostic;
}
