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
        ("docs/board.md", "paddock"),
    ];

    [Fact]
    public void A_name_has_no_old_word() => Assert.Empty(from file in Files("src", ".cs", ".razor").Concat(Files("proto", ".proto"))
                                                         from Match name in Identifier().Matches(Code(RepositoryRoot.Read(file)))
                                                         from Match word in Word().Matches(name.Value)
                                                         where IsOld(file, word.Value)
                                                         select $"{file}: {name.Value}");

    [Fact]
    public void A_document_has_no_old_word() => Assert.Empty(from file in Files("docs", ".md").Append("README.md").Append("DEVELOPERS.md")
                                                             where file != "docs/words.md" && !file.StartsWith("docs/decisions/", StringComparison.Ordinal)
                                                             from Match word in Word().Matches(RepositoryRoot.Read(file))
                                                             where IsOld(file, word.Value)
                                                             select $"{file}: {word.Value}");

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
