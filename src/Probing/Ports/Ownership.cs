using System.Runtime.InteropServices;

namespace ScaleLink.Probing.Ports;

/// <summary>Who may open a device node, asked of the system without opening it: opening would reset boards that take a handshake line as their reset.</summary>
internal static partial class Ownership
{
    private const int ReadAndWrite = 4 | 2;
    private const int AtCurrentFolder = -100;
    private const int GroupOnly = 0x10;
    // struct statx, the same on every architecture of Linux: 256 bytes, group id at 24.
    private const int StatxLength = 256, GroupAt = 24;

    /// <summary>Whether this user may read and write it.</summary>
    public static bool MayOpen(string node) => CanAccess(node, ReadAndWrite) == 0;

    /// <summary>Number of the group that owns it.</summary>
    public static uint? GroupOf(string node)
    {
        var answer = new byte[StatxLength];
        return AskStatus(AtCurrentFolder, node, 0, GroupOnly, answer) == 0 ? BitConverter.ToUInt32(answer, GroupAt) : null;
    }

    /// <summary>Name of a group; its number when the machine has none for it.</summary>
    public static string GroupName(SystemTree tree, uint group) =>
        SystemTree.Lines(Path.Combine(tree.Etc, "group")).Select(l => l.Split(':')).FirstOrDefault(f => f.Length > 2 && f[2] == $"{group}")?[0] ?? $"{group}";

    /// <summary>Whether this process is in a group now. A user who has been added to one is so only after logging in again.</summary>
    public static bool IsIn(SystemTree tree, uint group) => SystemTree.Lines(Path.Combine(tree.Proc, "self", "status"))
        .Where(l => l.StartsWith("Groups:", StringComparison.Ordinal) || l.StartsWith("Gid:", StringComparison.Ordinal))
        .SelectMany(l => l.Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries)).Contains($"{group}");

    [LibraryImport("libc", EntryPoint = "access", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int CanAccess(string path, int mode);

    [LibraryImport("libc", EntryPoint = "statx", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int AskStatus(int folder, string path, int flags, uint mask, byte[] answer);
}
