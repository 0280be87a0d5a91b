using System.Text.RegularExpressions;
using Shared;

namespace House.Tests;

/// <summary>
/// What the daemon says to people keeps its loads and lengths as arguments: <c>{Kg(load):0.0}</c>, never <c>{load:0.0} kg</c>, so that each device shows
/// it in its own units.
/// </summary>
public partial class SentenceSourceTests
{
    private static readonly string[] Folders = ["src/Weighing", "src/Daemon"];

    // Sheets and files are in kg and mm, and so is what is said about a file that gives kg and mm.
    private static readonly string[] Files =
    [
        "src/Daemon/Workflows/Calibration/Export/ProcedureCsv.cs",
        "src/Daemon/Workflows/Calibration/Export/ResultHtml.cs",
        "src/Daemon/Workflows/PadInterchange/InterchangeHtml.cs",
        "src/Daemon/Workflows/WorkSessions/Steps/PatchInReading.cs", // for sheets; a screen writes it of the loads
        "src/Weighing/Cars/CarModelCheck.cs",
        "src/Weighing/Cars/RaceCheck.cs",
        "src/Weighing/Pads/PadCalibration.cs", // kg_per_count of the bay file
    ];

    [Fact]
    public void No_sentence_has_a_bare_number_of_kg_or_mm() => Assert.Empty(from source in Sources()
                                                                            where !Files.Contains(source.File) && BareNumber().IsMatch(source.Line)
                                                                            select $"{source.File}: {source.Line.Trim()}");

    [Fact]
    public void Every_exception_is_still_needed() => Assert.All(Files, file => Assert.Contains(Sources(), s => s.File == file && BareNumber().IsMatch(s.Line)));

    // Another format is refused only when the sentence is said.
    [Fact]
    public void Every_argument_has_a_format_that_can_be_written()
    {
        var formats = (from source in Sources() from Match hole in Hole().Matches(source.Line) select (source.File, Format: hole.Groups["format"].Value)).ToList();
        Assert.True(formats.Count > 50);
        Assert.All(formats, f => Assert.Matches(@"^\+?0(\.0+|\.#+)?$", f.Format));
    }

    [Theory]
    [InlineData("""$"about {load:0.0} kg" """, true)]
    [InlineData("""$"{string.Join(" + ", all)}, listed as {Sum(all)} mm" """, true)]
    [InlineData("""$"about {Kg(load):0.0}" """, false)]
    [InlineData("""size is { } kg ? $"{kg} of all" : "" """, false)]
    public void A_bare_number_is_found(string line, bool isBare) => Assert.Equal(isBare, BareNumber().IsMatch(line));

    private static IEnumerable<(string File, string Line)> Sources() => from folder in Folders
                                                                        from path in Directory.EnumerateFiles(RepositoryRoot.File(folder), "*.cs", SearchOption.AllDirectories)
                                                                        let file = Path.GetRelativePath(RepositoryRoot.Path, path).Replace('\\', '/')
                                                                        where !file.Contains("/obj/", StringComparison.Ordinal)
                                                                        from line in File.ReadLines(path)
                                                                        where !line.TrimStart().StartsWith("//", StringComparison.Ordinal)
                                                                        select (file, line);

    // A hole before the unit, plain or with a call at its end; a property pattern has a space behind its brace.
    [GeneratedRegex(@"(\{(?! )[^{}]*|\)(:[^{}""]*)?)\} ?(kg|mm)\b")]
    private static partial Regex BareNumber();

    [GeneratedRegex(@"\{(Arguments\.)?(Bare)?(Kg|Mm)\([^{}""]*\):(?<format>[^{}""]*)\}")]
    private static partial Regex Hole();
}
