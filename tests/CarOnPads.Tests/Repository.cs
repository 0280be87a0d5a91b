namespace CarOnPads.Tests;

/// <summary>Files of the repository, found by walking up from the test binary.</summary>
static class Repository
{
    public static string Read(params string[] parts) => File.ReadAllText(Path.Combine([Root(), .. parts]));

    static string Root()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "ScaleLink.sln")))
                return folder.FullName;
        throw new InvalidOperationException($"No ScaleLink.sln above {AppContext.BaseDirectory}: run the tests inside the repository.");
    }
}
