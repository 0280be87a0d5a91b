namespace Shared.Rig;

/// <summary>Programs that the tests use when the machine has them. CI must have them.</summary>
internal static class InstalledProgram
{
    private static readonly string[] Folders = ["/usr/sbin", "/usr/bin", "/usr/local/bin", "/opt/homebrew/bin", "/opt/homebrew/sbin"];

    /// <summary>Skips the test where the program is not installed; fails it in CI, which installs it.</summary>
    public static void Need(string program)
    {
        if (Path(program) is not null)
            return;
        Assert.False(Environment.GetEnvironmentVariable("CI") == "true", $"{program} is missing, and CI must have it.");
        Assert.Skip($"{program} is not installed.");
    }

    /// <summary>Where it is; nothing when it is not.</summary>
    public static string? Path(string program) => Folders.Select(folder => System.IO.Path.Combine(folder, program)).FirstOrDefault(File.Exists);
}
