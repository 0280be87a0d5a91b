using System.Diagnostics;
using Shared;

namespace Daemon.Tests.Links;

/// <summary>Root passes permission and exclusive-open checks, so these run the daemon's own check as an ordinary user.</summary>
public class OpenAsOrdinaryUserTests
{
    [Fact]
    public void A_port_of_another_user_is_named_as_forbidden()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() && Environment.UserName == "root" && File.Exists("/usr/sbin/runuser"), "Needs root, to become somebody else.");
        var folder = Directory.CreateTempSubdirectory();
        File.SetUnixFileMode(folder.FullName, (UnixFileMode)0b111_101_101);
        var bay = Path.Combine(folder.FullName, "bay.toml");
        File.WriteAllText(bay, "bay = \"unit6\"\n[[pads]]\ncorner = \"LF\"\nlink = \"/dev/ttyS0\"\n");
        Assert.SkipUnless(File.Exists("/dev/ttyS0"), "The machine has no /dev/ttyS0.");
        var daemon = CopyDaemonTo(folder);
        Assert.Contains("SL-102", Check(daemon, bay));
        folder.Delete(recursive: true);
    }

    // The checkout may lie where nobody else can read.
    private static string CopyDaemonTo(DirectoryInfo folder)
    {
        var built = RepositoryRoot.File("artifacts", "bin", "ScaleLink.Daemon", Path.GetFileName(Path.TrimEndingDirectorySeparator(AppContext.BaseDirectory)));
        using var copy = Process.Start("cp", ["-r", built, Path.Combine(folder.FullName, "daemon")]);
        copy.WaitForExit();
        return Path.Combine(folder.FullName, "daemon", "scalelinkd.dll");
    }

    private static string Check(string daemon, string bay)
    {
        var start = new ProcessStartInfo("/usr/sbin/runuser", ["-u", "nobody", "--", "dotnet", daemon, "--bay", bay, "--check"])
        {
            RedirectStandardError = true,
            Environment = { ["HOME"] = "/tmp", ["DOTNET_CLI_HOME"] = "/tmp" },
        };
        using var process = Process.Start(start)!;
        var said = process.StandardError.ReadToEnd();
        process.WaitForExit();
        return said;
    }
}
