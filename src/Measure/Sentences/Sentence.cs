using System.ComponentModel;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text.Json.Serialization;

namespace ScaleLink.Measure.Sentences;

/// <summary>
/// What is said to people: words, with the loads and lengths in them kept as values, so that each device shows it in its own units. Written as an
/// interpolated string, see <see cref="Arguments"/>; other holes become words at once. By itself, and in every record, it is in kg and mm.
/// </summary>
[InterpolatedStringHandler]
[JsonConverter(typeof(SentenceJsonConverter))]
public struct Sentence : IEquatable<Sentence>
{
    private Pattern? _pattern;

    /// <summary>Called by the compiler for an interpolated string.</summary>
    [EditorBrowsable(EditorBrowsableState.Never), SuppressMessage("Style", "IDE0060", Justification = "The compiler gives both.")]
    public Sentence(int literalLength, int formattedCount)
    {
    }

    private Sentence(Pattern pattern) => _pattern = pattern;

    /// <summary>Nothing is said.</summary>
    public readonly bool IsEmpty => Whole.Text.Length == 0;

    /// <summary>The words, with {0}, {1} and so on where the arguments stand; a brace of the words is doubled.</summary>
    public readonly string Text => Whole.Text;

    /// <summary>In the order of their numbers.</summary>
    public readonly IReadOnlyList<Argument> Arguments => Whole.Arguments;

    private readonly Pattern Whole => _pattern ?? Pattern.Empty;

    /// <summary>Words without arguments.</summary>
    public static Sentence FromString(string? words) => new(Pattern.Words(words ?? ""));

    /// <summary>The one of that text and those arguments; null when they do not belong together.</summary>
    public static Sentence? Parse(string text, IReadOnlyList<Argument> arguments) => new Pattern(text, [.. arguments]) is { IsSound: true } sound ? new(sound) : null;

    /// <summary>Several, one after the other.</summary>
    public static Sentence Join(string separator, params IEnumerable<Sentence> sentences)
    {
        ArgumentNullException.ThrowIfNull(sentences);
        return new(sentences.Select(s => s.Whole).Aggregate((Pattern?)null, (all, next) => all?.Then(Pattern.Words(separator)).Then(next) ?? next) ?? Pattern.Empty);
    }

    /// <summary>In the units of a device.</summary>
    public readonly string In(Unit mass, Unit length) => Whole.Write(q => q.In(q.Unit == Unit.Millimetre ? length : mass));

    /// <summary>In kg and mm.</summary>
    public override readonly string ToString() => Whole.Write(q => q.In(q.Unit));

    /// <summary>Called by the compiler.</summary>
    [EditorBrowsable(EditorBrowsableState.Never)]
    public void AppendLiteral(string words) => Append(Pattern.Words(words));

    /// <summary>Called by the compiler.</summary>
    [EditorBrowsable(EditorBrowsableState.Never)]
    public void AppendFormatted(ArgumentHole argument, string? format = null) => Append(new("{0}", [argument.As(format)]));

    /// <summary>Called by the compiler.</summary>
    [EditorBrowsable(EditorBrowsableState.Never)]
    public void AppendFormatted(Sentence inner) => Append(inner.Whole);

    /// <summary>Called by the compiler.</summary>
    [EditorBrowsable(EditorBrowsableState.Never)]
    public void AppendFormatted<T>(T value, string? format = null) =>
        Append(Pattern.Words((value is IFormattable number ? number.ToString(format, CultureInfo.InvariantCulture) : value?.ToString()) ?? ""));

    /// <summary>True when both say the same in kg and mm: so one that was on record equals the one that was written there.</summary>
    public readonly bool Equals(Sentence other) => ToString() == other.ToString();

    /// <inheritdoc/>
    public override readonly bool Equals(object? obj) => obj is Sentence other && Equals(other);

    /// <inheritdoc/>
    public override readonly int GetHashCode() => ToString().GetHashCode(StringComparison.Ordinal);

    /// <summary>True when both say the same.</summary>
    public static bool operator ==(Sentence one, Sentence other) => one.Equals(other);

    /// <summary>True when they do not.</summary>
    public static bool operator !=(Sentence one, Sentence other) => !one.Equals(other);

    /// <summary>Words without arguments.</summary>
    public static implicit operator Sentence(string? words) => FromString(words);

    /// <summary>In kg and mm: for logs, records and other programs.</summary>
    public static implicit operator string(Sentence sentence) => sentence.ToString();

    private void Append(Pattern more) => _pattern = Whole.Then(more);
}
