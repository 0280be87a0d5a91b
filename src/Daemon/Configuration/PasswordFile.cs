namespace ScaleLink.Daemon.Configuration;

/// <summary>The file that holds the password for an external broker; only its text goes over the line, and only its owner and group may see it.</summary>
internal static class PasswordFile
{
    private const UnixFileMode Others = UnixFileMode.OtherRead | UnixFileMode.OtherWrite;

    /// <summary>Its path, meant from where the bay file lies; nothing when none is named. One that is open to everybody is a mistake.</summary>
    public static string? Find(TomlBlock block, string bayFile)
    {
        if (block.Text("password_file") is not { } name)
            return null;
        var path = Path.GetFullPath(name, Path.GetDirectoryName(Path.GetFullPath(bayFile))!);
        // Windows has no such modes: there the folder's rights are the file's.
        if (!OperatingSystem.IsWindows() && File.Exists(path) && (File.GetUnixFileMode(path) & Others) != 0)
            block.Note(ConfigurationCodes.PasswordFileOpen, block.LineOf("password_file"), $"mqtt.password_file = \"{name}\" is open to everybody on this machine.",
                $"chmod o-rwx '{path}', then change the password: others may have read it.");
        return path;
    }
}
