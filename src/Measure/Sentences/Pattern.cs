using System.Text.RegularExpressions;

namespace ScaleLink.Measure.Sentences;

/// <summary>Words with numbered holes and what stands in them.</summary>
internal sealed partial record Pattern(string Text, IReadOnlyList<Argument> Arguments)
{
    public static Pattern Empty { get; } = new("", []);

    /// <summary>Every hole has an argument and every argument its hole; each brace is a hole's or doubled.</summary>
    public bool IsSound => Pieces().Matches(Text) is var pieces && pieces.Sum(p => p.Length) == Text.Length
        && pieces.Where(IsHole).Select(Number).Order().SequenceEqual(Enumerable.Range(0, Arguments.Count));

    public static Pattern Words(string words) => new(words.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal), []);

    /// <summary>Both, the holes of the second counted on.</summary>
    public Pattern Then(Pattern more) => new(
        Text + (Arguments.Count == 0 ? more.Text : more.Rewritten(hole => $"{{{Number(hole) + Arguments.Count}}}", isBraceKept: true)), [.. Arguments, .. more.Arguments]);

    public string Write(Func<Argument, string> argument) => Rewritten(hole => argument(Arguments[Number(hole)]), isBraceKept: false);

    private string Rewritten(Func<Match, string> hole, bool isBraceKept) => !Text.Contains('{', StringComparison.Ordinal) && !Text.Contains('}', StringComparison.Ordinal)
        ? Text
        : Pieces().Replace(Text, piece => IsHole(piece) ? hole(piece) : isBraceKept ? piece.Value : piece.Value switch { "{{" => "{", "}}" => "}", var words => words });

    private static bool IsHole(Match piece) => piece.Groups["number"].Success;

    private static int Number(Match hole) => int.Parse(hole.Groups["number"].ValueSpan, System.Globalization.CultureInfo.InvariantCulture);

    [GeneratedRegex(@"\{(?<number>\d{1,3})\}|\{\{|\}\}|[^{}]+", RegexOptions.CultureInvariant)]
    private static partial Regex Pieces();
}
