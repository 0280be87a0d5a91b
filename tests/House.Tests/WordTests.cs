using System.Text.RegularExpressions;
using Shared;

namespace House.Tests;

/// <summary>One subject has one name (docs/words.md): a word that another one has replaced does not come back, neither in a name nor in a document.</summary>
public partial class WordTests
{
    private static readonly HashSet<string> Old = new(StringComparer.OrdinalIgnoreCase)
    {
        "proof", "proofs", "proved", "unproved", "proving", "rotation", "rotations", "paddock", "ritual", "recipe", "mend", "doubt", "doubts", "yardstick", "survey", "surveys", "scatter", "capture", "captures",
    };

    // Where the word has another sense, or is a name that was stored or published before.
    private static readonly (string File, string Word)[] Allowed =
    [
        ("src/Protocol/TextLines/LinePattern.cs", "capture"), // RegexOptions.ExplicitCapture
        ("docs/car.md", "doubt"), // earlier names of fields
        ("docs/simulator.md", "paddock"), // a scenario: the place
        ("docs/patch.md", "paddock"),
        ("docs/recordings.md", "capture"), // the earlier mark and end of a file
        ("docs/board.md", "paddock"),
        ("docs/client.md", "paddock"),
        ("docs/faces.md", "paddock"),
    ];

    public static TheoryData<string> Sources() => [.. Files("src", ".cs", ".razor"), .. Files("proto", ".proto")];

    public static TheoryData<string> Documents() => [.. Files("docs", ".md").Where(f => f != "docs/words.md" && !f.StartsWith("docs/decisions/", StringComparison.Ordinal)), "README.md"];

    [Theory]
    [MemberData(nameof(Sources))]
    public void A_name_has_no_old_word(string file) => Assert.Empty(Identifier().Matches(Code(RepositoryRoot.Read(file)))
        .SelectMany(name => Word().Matches(name.Value).Select(w => w.Value)).Where(w => IsOld(file, w)).Distinct());

    [Theory]
    [MemberData(nameof(Documents))]
    public void A_document_has_no_old_word(string file) =>
        Assert.Empty(Word().Matches(RepositoryRoot.Read(file)).Select(w => w.Value).Where(w => IsOld(file, w)).Distinct());

    [Fact]
    public void Every_exception_is_still_needed() => Assert.All(Allowed, a =>
        Assert.Contains(Word().Matches(RepositoryRoot.Read(a.File)), w => w.Value.Equals(a.Word, StringComparison.OrdinalIgnoreCase)));

    private static bool IsOld(string file, string word) =>
        Old.Contains(word) && !Allowed.Any(a => a.File == file && a.Word.Equals(word, StringComparison.OrdinalIgnoreCase));

    // Comments and quoted text are sentences and stored names, not names of the code.
    private static string Code(string text) => Quoted().Replace(text, " ");

    private static IEnumerable<string> Files(string folder, params string[] ends) => Directory.EnumerateFiles(RepositoryRoot.File(folder), "*", SearchOption.AllDirectories)
        .Where(f => ends.Contains(Path.GetExtension(f))).Select(f => Path.GetRelativePath(RepositoryRoot.Path, f).Replace('\\', '/'))
        .Where(f => !f.Contains("/obj/", StringComparison.Ordinal)).Order(StringComparer.Ordinal);

    [GeneratedRegex("\"\"\"[\\s\\S]*?\"\"\"|\"(?:[^\"\\\\\\n]|\\\\.)*\"|//[^\\n]*")]
    private static partial Regex Quoted();

    [GeneratedRegex("[A-Za-z_][A-Za-z0-9_]*")]
    private static partial Regex Identifier();

    // The words of PascalCase, camelCase, snake_case and plain text.
    [GeneratedRegex("[A-Z]?[a-z]+|[A-Z]+(?![a-z])")]
    private static partial Regex Word();
}
