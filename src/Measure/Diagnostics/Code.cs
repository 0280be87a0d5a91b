using System.Diagnostics.CodeAnalysis;
using ScaleLink.Measure.Sentences;

namespace ScaleLink.Measure.Diagnostics;

/// <summary>
/// The stable name of one thing that can be wrong, such as SL-207. It is declared once, in the catalogue, never changes its meaning and is never used again.
/// What another program or an old record told is read as it stands, and need not be in the catalogue.
/// </summary>
public sealed class Code : IEquatable<Code>
{
    private Code(string text, string meaning, string remedy) => (Text, Meaning, Remedy) = (text, meaning, remedy);

    /// <summary>As it stands on screens, in logs and on the wire.</summary>
    public string Text { get; }

    /// <summary>What is wrong, in general. Empty for a code that was only read.</summary>
    public string Meaning { get; }

    /// <summary>What to do next, in general. Empty for a code that was only read.</summary>
    public string Remedy { get; }

    /// <summary>The code that another program, or a record, tells.</summary>
    public static Code Read(string text) => new(text ?? "", "", "");

    /// <summary>This case of it: the meaning with its figures, and the general remedy.</summary>
    public Diagnostic Because(Sentence detail) => new(this, $"{Meaning}: {detail}.", Remedy);

    /// <inheritdoc/>
    public bool Equals(Code? other) => other is not null && Text == other.Text;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Code);

    /// <inheritdoc/>
    public override int GetHashCode() => Text.GetHashCode(StringComparison.Ordinal);

    /// <summary>True for the same text.</summary>
    public static bool operator ==(Code? one, Code? other) => one?.Text == other?.Text;

    /// <summary>True for another text.</summary>
    public static bool operator !=(Code? one, Code? other) => !(one == other);

    /// <inheritdoc/>
    public override string ToString() => Text;

    /// <summary>The text of a code, for whoever only prints or compares it.</summary>
    [return: NotNullIfNotNull(nameof(code))]
    public static implicit operator string?(Code? code) => code?.Text;

    internal static Code Declare(int number, string meaning, string remedy) => new($"SL-{number:000}", meaning, remedy);
}
