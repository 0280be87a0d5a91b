using System.Reflection;
using System.Text.RegularExpressions;
using ScaleLink.Measure.Diagnostics;
using Shared;

namespace Measure.Tests.Diagnostics;

/// <summary>Each code stands once in the catalogue, and nowhere else as a text.</summary>
public partial class CatalogueTests
{
    // Where a code may stand as a text: no C# is read there.
    private static readonly string[] BareTexts = ["src/Board/wwwroot/js/opening.js"];

    [Fact]
    public void No_number_is_declared_twice()
    {
        Assert.Empty(Catalogue.All.GroupBy(c => c.Text).Where(g => g.Count() > 1).Select(g => g.Key));
        Assert.True(Catalogue.All.Count() > 200);
    }

    [Fact]
    public void A_number_that_is_taken_is_refused()
    {
        var area = new CodeArea("a second one", "of the same numbers");
        var taken = int.Parse(LinkCodes.PortMissing.Text[3..]);
        Assert.Contains($"Code {taken} ", Assert.Throws<InvalidOperationException>(() => area.Declare(taken, "anything", "Nothing.")).Message, StringComparison.Ordinal);
        Assert.Empty(area.Codes);
    }

    [Fact]
    public void Every_class_of_codes_stands_in_the_catalogue_with_all_its_members()
    {
        var declared = Members().ToList();
        Assert.Equal([.. declared.Select(m => m.Code.Text).Order()], Catalogue.All.Select(c => c.Text).Order());
        Assert.Equal(declared.Count, declared.DistinctBy(m => m.Name).Count());
    }

    [Fact]
    public void Each_code_says_what_it_means_and_what_to_do()
    {
        foreach (var code in Catalogue.All)
        {
            // A meaning is the head of a sentence that a case goes on with; a remedy is whole sentences.
            Assert.Matches("^[A-Z].*[^.]$", code.Meaning);
            Assert.Matches("^[A-Za-z].*[.]$", code.Remedy);
        }
    }

    [Fact]
    public void Each_code_is_used()
    {
        var sources = string.Join('\n', Sources().Where(f => !f.Name.StartsWith("src/Measure/", StringComparison.Ordinal)).Select(f => f.Text));
        Assert.Empty(Members().Where(m => !Regex.IsMatch(sources, $@"\b{Regex.Escape(m.Name)}\b")).Select(m => $"{m.Name} {m.Code}"));
    }

    [Fact]
    public void No_code_stands_as_a_text_outside_the_catalogue()
    {
        var strange = from file in Sources()
                      from line in file.Text.Split('\n')
                      where !line.TrimStart().StartsWith("//", StringComparison.Ordinal) && AnyCode().IsMatch(line)
                      select $"{file.Name}: {line.Trim()}";
        Assert.Empty(strange);
    }

    [Fact]
    public void Documents_comments_and_contracts_name_only_codes_that_there_are()
    {
        var known = Catalogue.All.Select(c => c.Text).ToHashSet();
        var unknown = from file in Sources().Concat(Files("docs", "*.md")).Concat(Files("proto", "*.proto")).Concat(BareTexts.Select(Read)).Append(Read("README.md"))
                      from Match match in AnyCode().Matches(file.Text)
                      where !known.Contains(match.Value)
                      select $"{file.Name}: {match.Value}";
        Assert.Empty(unknown);
    }

    [Fact]
    public void The_page_of_codes_is_what_the_catalogue_says() => Approved.Matches(CodePage.Of(Catalogue.Areas), "docs", "codes.md");

    private static IEnumerable<(string Name, Code Code)> Members() =>
        from type in typeof(Catalogue).Assembly.GetTypes()
        from field in type.GetFields(BindingFlags.Public | BindingFlags.Static)
        where field.FieldType == typeof(Code)
        select ($"{type.Name}.{field.Name}", (Code)field.GetValue(null)!);

    private static IEnumerable<(string Name, string Text)> Sources() => Files("src", "*.cs").Concat(Files("src", "*.razor"));

    private static IEnumerable<(string Name, string Text)> Files(string folder, string pattern) => Directory
        .EnumerateFiles(RepositoryRoot.File(folder), pattern, SearchOption.AllDirectories)
        .Select(p => Read(Path.GetRelativePath(RepositoryRoot.Path, p).Replace('\\', '/')));

    private static (string Name, string Text) Read(string name) => (name, File.ReadAllText(RepositoryRoot.File(name)));

    [GeneratedRegex(@"SL-\d{3}")]
    private static partial Regex AnyCode();
}
