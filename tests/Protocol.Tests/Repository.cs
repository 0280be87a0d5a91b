namespace ScaleLink.Protocol.Tests;

/// <summary>Files of the repository, found by walking up from the test binary.</summary>
static class Repository
{
    static readonly string Root = FindRoot();

    public static string PathTo(params string[] parts) => Path.Combine([Root, .. parts]);

    public static string Read(params string[] parts) => File.ReadAllText(PathTo(parts));

    static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "ScaleLink.sln")))
                return folder.FullName;
        throw new InvalidOperationException($"No ScaleLink.sln above {AppContext.BaseDirectory}: run the tests inside the repository.");
    }
}
