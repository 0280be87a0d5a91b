using System.Globalization;
using ScaleLink.Probing.Ports;

namespace ScaleLink.Client.Doctor;

/// <summary>A running program.</summary>
internal sealed record RunningProcess(int Id, string Name, string CommandLine)
{
    /// <summary>ScaleLink's own daemon, also where the .NET host runs it.</summary>
    public bool IsDaemon => Name == "scalelinkd" || CommandLine.Contains("scalelinkd", StringComparison.Ordinal);

    public override string ToString() => $"{(IsDaemon ? "scalelinkd" : Name)} (process {Id.ToString(CultureInfo.InvariantCulture)})";
}

/// <summary>The processes of a machine and the files that they have open.</summary>
internal static class Processes
{
    public static IReadOnlyList<RunningProcess> All(SystemTree tree) =>
    [
        .. from folder in Folders(tree)
           let id = int.Parse(Path.GetFileName(folder), CultureInfo.InvariantCulture)
           let name = SystemTree.Line(Path.Combine(folder, "comm"))
           where name is not null
           select new RunningProcess(id, name, string.Join(' ', SystemTree.Lines(Path.Combine(folder, "cmdline"))).Replace('\0', ' ')),
    ];

    /// <summary>Who has a device node open. <paramref name="unseen"/>: how many processes did not let themselves be looked into.</summary>
    public static IReadOnlyList<RunningProcess> Holding(SystemTree tree, IEnumerable<RunningProcess> all, string node, out int unseen)
    {
        var holders = new List<RunningProcess>();
        unseen = 0;
        foreach (var process in all)
        {
            try
            {
                if (Directory.EnumerateFileSystemEntries(Path.Combine(tree.Proc, $"{process.Id}", "fd")).Any(fd => new FileInfo(fd).LinkTarget == node))
                    holders.Add(process);
            }
            catch (UnauthorizedAccessException)
            {
                unseen++;
            }
            catch (IOException)
            {
                // It has ended meanwhile.
            }
        }

        return holders;
    }

    private static IEnumerable<string> Folders(SystemTree tree) =>
        Directory.Exists(tree.Proc) ? Directory.EnumerateDirectories(tree.Proc).Where(f => Path.GetFileName(f).All(char.IsAsciiDigit)) : [];
}
