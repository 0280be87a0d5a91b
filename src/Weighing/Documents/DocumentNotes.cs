using ScaleLink.Weighing.Cars;

namespace ScaleLink.Weighing.Documents;

/// <summary>Every mistake found in a document, each with its place and line: all are told at once.</summary>
sealed class DocumentNotes(string text)
{
    readonly List<Finding> found = [];
    JsonLines? lines;

    /// <summary>So far, in the order of the document.</summary>
    public IReadOnlyList<Finding> Found => [.. found.OrderBy(f => f.Line ?? 0)];

    public void Add(string code, string place, string message, string mend) =>
        Add(new Finding(code, message, mend) { Place = place });

    /// <summary>Takes a finding whose place is one of the document.</summary>
    public void Add(Finding finding) => found.Add(finding with { Line = finding.Line ?? (lines ??= new(text)).Of(finding.Place) });
}
