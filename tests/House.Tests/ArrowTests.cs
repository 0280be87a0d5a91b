using System.Xml.Linq;
using Shared;

namespace House.Tests;

/// <summary>The arrows of the house: which project may know which. An arrow that is not listed here fails.</summary>
public class ArrowTests
{
    private static readonly Dictionary<string, string[]> Allowed = new()
    {
        ["src/Measure/ScaleLink.Measure.csproj"] = [],
        ["proto/ScaleLink.Api.csproj"] = ["src/Measure/ScaleLink.Measure.csproj"],
        ["src/Protocol/ScaleLink.Protocol.csproj"] = [],
        ["src/Probing/ScaleLink.Probing.csproj"] = ["src/Measure/ScaleLink.Measure.csproj", "src/Protocol/ScaleLink.Protocol.csproj"],
        ["src/Weighing/ScaleLink.Weighing.csproj"] = ["src/Measure/ScaleLink.Measure.csproj"],
        ["src/Daemon/ScaleLink.Daemon.csproj"] = ["proto/ScaleLink.Api.csproj", "src/Board/ScaleLink.Board.csproj", "src/Measure/ScaleLink.Measure.csproj", "src/Probing/ScaleLink.Probing.csproj", "src/Protocol/ScaleLink.Protocol.csproj", "src/Weighing/ScaleLink.Weighing.csproj"],
        ["src/Client/ScaleLink.Client.csproj"] = ["proto/ScaleLink.Api.csproj", "src/Measure/ScaleLink.Measure.csproj", "src/Probing/ScaleLink.Probing.csproj", "src/Protocol/ScaleLink.Protocol.csproj", "src/Weighing/ScaleLink.Weighing.csproj"],
        ["src/Board/ScaleLink.Board.csproj"] = ["proto/ScaleLink.Api.csproj", "src/Measure/ScaleLink.Measure.csproj"],
        ["simulators/CarOnPads/CarOnPads.csproj"] = ["src/Protocol/ScaleLink.Protocol.csproj"],
    };

    public static TheoryData<string> Projects() => [.. Directory
        .EnumerateFiles(RepositoryRoot.Path, "*.csproj", SearchOption.AllDirectories)
        .Select(p => Path.GetRelativePath(RepositoryRoot.Path, p).Replace('\\', '/'))
        .Where(p => p.StartsWith("src/", StringComparison.Ordinal) || p.StartsWith("proto/", StringComparison.Ordinal) || p.StartsWith("simulators/", StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(Projects))]
    public void Each_project_knows_only_whom_it_may(string project)
    {
        Assert.True(Allowed.TryGetValue(project, out var allowed), $"{project} has no place in the house: give it one in {nameof(ArrowTests)}.");
        Assert.Empty(Linked(project).Except(allowed));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void No_project_compiles_the_source_of_another(string project)
    {
        var outside = XDocument.Load(RepositoryRoot.File(project)).Descendants("Compile")
            .Select(c => (string?)c.Attribute("Include"))
            .Where(i => i?.StartsWith("..", StringComparison.Ordinal) == true);
        Assert.Empty(outside);
    }

    // A reference without its output is build order, not knowledge.
    private static IEnumerable<string> Linked(string project)
    {
        var folder = Path.GetDirectoryName(RepositoryRoot.File(project))!;
        return XDocument.Load(RepositoryRoot.File(project)).Descendants("ProjectReference")
            .Where(r => (string?)r.Attribute("ReferenceOutputAssembly") != "false")
            .Select(r => Path.GetRelativePath(RepositoryRoot.Path, Path.GetFullPath((string)r.Attribute("Include")!, folder)).Replace('\\', '/'));
    }
}
