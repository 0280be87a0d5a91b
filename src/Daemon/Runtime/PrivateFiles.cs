namespace ScaleLink.Daemon.Runtime;

/// <summary>
/// Files that hold what people entered and what devices said: the daemon's user writes them, its group reads them, nobody else does. On Windows they
/// have the rights of their folder.
/// </summary>
internal static class PrivateFiles
{
    private const UnixFileMode File0640 = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead;
    private const UnixFileMode Folder0750 = File0640 | UnixFileMode.UserExecute | UnixFileMode.GroupExecute;
    private const UnixFileMode Others = UnixFileMode.OtherRead | UnixFileMode.OtherWrite | UnixFileMode.OtherExecute;

    /// <summary>Opens a file to write it; one that is made is private.</summary>
    /// <exception cref="IOException">The disk is full, the folder is missing, or <paramref name="mode"/> cannot be had.</exception>
    /// <exception cref="UnauthorizedAccessException">This user may not write there.</exception>
    public static FileStream Open(string path, FileMode mode)
    {
        var options = new FileStreamOptions { Mode = mode, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = File0640;
        return new FileStream(path, options);
    }

    /// <summary>Makes the folder where there is none. One that is there keeps its rights: whoever made it gave it those.</summary>
    public static void MakeFolder(string path)
    {
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(path);
        else
            Directory.CreateDirectory(path, Folder0750);
    }

    /// <summary>Takes from others what an earlier version left them of a file; its owner's and its group's rights stay.</summary>
    public static void Shut(string path)
    {
        if (OperatingSystem.IsWindows() || !File.Exists(path) || File.GetUnixFileMode(path) is var mode && (mode & Others) == 0)
            return;
        try
        {
            File.SetUnixFileMode(path, mode & ~Others);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It belongs to another user, whose decision it is, or its disk takes no more changes.
        }
    }
}
