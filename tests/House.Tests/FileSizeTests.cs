using Shared;

namespace House.Tests;

/// <summary>Files stay small enough to be read at one sitting.</summary>
public class FileSizeTests
{
    private const int Longest = 400;
    private const int MedianTo = 90;

    [Fact]
    public void No_source_file_has_more_than_400_lines() =>
        Assert.DoesNotContain(Sources("src", "simulators", "tests", "bench", "proto"), f => f.Lines > Longest);

    [Fact]
    public void The_median_file_of_the_product_is_short()
    {
        var lines = Sources("src").Select(f => f.Lines).Order().ToList();
        Assert.InRange(lines[lines.Count / 2], 1, MedianTo);
    }

    private static List<(string File, int Lines)> Sources(params string[] folders) =>
    [
        .. folders.Select(f => RepositoryRoot.File(f)).Where(Directory.Exists)
            .SelectMany(f => Directory.EnumerateFiles(f, "*", SearchOption.AllDirectories))
            .Where(f => Path.GetExtension(f) is ".cs" or ".razor" or ".proto" or ".js" or ".css")
            .Where(f => !f.Contains("/obj/", StringComparison.Ordinal) && !f.Contains("/bin/", StringComparison.Ordinal))
            .Select(f => (Path.GetRelativePath(RepositoryRoot.Path, f), File.ReadLines(f).Count())),
    ];
}
