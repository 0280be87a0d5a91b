using ScaleLink.Measure.Sentences;

namespace ScaleLink.Measure.Diagnostics;

/// <summary>Right in itself, but not as things stand: nothing was done.</summary>
public sealed class RefusedException(Diagnostic diagnostic) : Exception(diagnostic?.ToString())
{
    /// <summary>Refuses with the figures of this case.</summary>
    public RefusedException(Code code, Sentence message, Sentence remedy) : this(new Diagnostic(code, message, remedy))
    {
    }

    /// <summary>Why, and what to do next.</summary>
    public Diagnostic Diagnostic { get; } = diagnostic ?? throw new ArgumentNullException(nameof(diagnostic));
}
