using Shared;

namespace Daemon.Tests.Journal;

/// <summary>The ledgers under tests/ledgers, by shape and name, such as <c>0.1.0/work-session</c>.</summary>
internal static class FrozenLedgers
{
    private static readonly string Folder = RepositoryRoot.File("tests", "ledgers");

    public static IReadOnlyList<string> All { get; } =
        [.. Directory.GetFiles(Folder, "*.db", SearchOption.AllDirectories).Select(f => Path.ChangeExtension(Path.GetRelativePath(Folder, f), null).Replace('\\', '/')).Order(StringComparer.Ordinal)];

    /// <summary>A copy to work on; the frozen file itself is never opened, since opening can write.</summary>
    public static string CopyTo(DirectoryInfo folder, string frozen)
    {
        var path = Path.Combine(folder.FullName, frozen.Replace('/', '-') + ".db");
        foreach (var part in (string[])["", ".head"])
            File.Copy(Path.Combine(Folder, frozen + ".db" + part), path + part, overwrite: true);
        return path;
    }
}
