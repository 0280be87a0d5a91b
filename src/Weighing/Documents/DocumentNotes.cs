namespace ScaleLink.Weighing.Documents;

/// <summary>Every mistake found in a document, each with its place and line: all are told at once.</summary>
sealed class DocumentNotes(string text)
{
    readonly List<Diagnostic> found = [];
    readonly List<Diagnostic> earlier = [];
    JsonLines? lines;

    /// <summary>So far, in the order of the document.</summary>
    public IReadOnlyList<Diagnostic> Found => [.. found.OrderBy(f => f.Line ?? 0)];

    /// <summary>Fields under an earlier name; they are no mistakes.</summary>
    public IReadOnlyList<Diagnostic> Earlier => earlier;

    /// <summary>Tells of a field under an earlier name.</summary>
    public void AddEarlier(string place, string now) =>
        earlier.Add(new(CarCodes.EarlierName, $"{place} is an earlier name of {now}; it is read as that.", $"Write {now} instead.") { Where = place, Line = (lines ??= new(text)).Of(place) });

    public void Add(Code code, string place, Sentence message, Sentence remedy) =>
        Add(new Diagnostic(code, message, remedy) { Where = place });

    /// <summary>Takes a finding whose place is one of the document.</summary>
    public void Add(Diagnostic finding) => found.Add(finding with { Line = finding.Line ?? (lines ??= new(text)).Of(finding.Where) });
}
