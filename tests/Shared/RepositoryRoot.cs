namespace Shared;

/// <summary>Finds files of the checkout from wherever a test runs.</summary>
internal static class RepositoryRoot
{
    public static string Path { get; } = Find();

    public static string File(params string[] parts) => System.IO.Path.Combine([Path, .. parts]);

    public static string Read(params string[] parts) => System.IO.File.ReadAllText(File(parts));

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !System.IO.File.Exists(System.IO.Path.Combine(folder.FullName, "ScaleLink.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("The tests run outside the checkout.");
    }
}
