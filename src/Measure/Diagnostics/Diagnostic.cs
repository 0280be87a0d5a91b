using System.Text.Json.Serialization;
using ScaleLink.Measure.Sentences;

namespace ScaleLink.Measure.Diagnostics;

/// <summary>Something that is wrong or uncertain, as everybody tells it: what it is called, what it is, and what to do next.</summary>
/// <param name="Code">Stays the same from version to version.</param>
/// <param name="Message">What is wrong, with the figures of this case: whole sentences.</param>
/// <param name="Remedy">What to do next: whole sentences. Empty when there is nothing to be done.</param>
[JsonConverter(typeof(DiagnosticJsonConverter))]
public sealed record Diagnostic(Code Code, Sentence Message, Sentence Remedy = default)
{
    /// <summary>Which value it is about, or where that stands in a document, such as <c>front.motion_ratio</c>. Empty: about the whole.</summary>
    public string Where { get; init; } = "";

    /// <summary>Line of the place in the document, from 1. Null: not about a line.</summary>
    public int? Line { get; init; }

    /// <summary>When it began, ns on the monotonic clock of who tells it. Null: it is not in effect over a time.</summary>
    public long? SinceNs { get; init; }

    /// <summary>For people: what is wrong, what to do, and the code at the end.</summary>
    public Sentence Whole => Sentence.Join(" ", ((IEnumerable<Sentence>)[Message, Remedy, Code.Text.Length > 0 ? $"({Code})" : default]).Where(s => !s.IsEmpty));

    /// <summary>The same in kg and mm.</summary>
    public override string ToString() => Whole.ToString();
}
