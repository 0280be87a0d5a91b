using System.Text.RegularExpressions;
using System.Xml.Linq;
using Shared;

namespace House.Tests;

/// <summary>A subject has a room of one name on every floor, and a file's namespace is its folder.</summary>
public partial class RoomTests
{
    private static readonly string[] Floors = ["Weighing", "Client", "Board"];
    private static readonly string[] Homes = ["src", "simulators"];

    [Fact]
    public void A_subject_has_a_room_of_its_name_on_every_floor()
    {
        var subjects = Directory.EnumerateDirectories(RepositoryRoot.File("src", "Daemon", "Workflows")).Select(d => Path.GetFileName(d)!).ToList();
        Assert.NotEmpty(subjects);
        Assert.All(subjects, subject => Assert.All(Floors, floor => Assert.True(Directory.Exists(RepositoryRoot.File("src", floor, subject)), $"src/{floor}/{subject}")));
    }

    [Fact]
    public void A_namespace_is_its_folder() => Assert.All(
        Homes.SelectMany(home => Directory.EnumerateFiles(RepositoryRoot.File(home), "*.csproj", SearchOption.AllDirectories)), project =>
        {
            var folder = Path.GetDirectoryName(project)!;
            var root = (string?)XDocument.Load(project).Descendants("RootNamespace").FirstOrDefault() ?? Path.GetFileNameWithoutExtension(project);
            foreach (var file in Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories))
                if (Namespace().Match(File.ReadAllText(file)) is { Success: true } found)
                    Assert.Equal($"{file}: {Of(root, Path.GetRelativePath(folder, Path.GetDirectoryName(file)!))}", $"{file}: {found.Groups[1].Value}");
        });

    private static string Of(string root, string folder) => folder == "." ? root : $"{root}.{folder.Replace(Path.DirectorySeparatorChar, '.')}";

    [GeneratedRegex(@"^namespace ([\w.]+)", RegexOptions.Multiline)]
    private static partial Regex Namespace();
}
