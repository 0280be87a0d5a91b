using System.Diagnostics;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Demo;

namespace Client.Tests.Doctor;

/// <summary>Runs the client as a user without rights, which takes root to do.</summary>
internal static class OrdinaryUser
{
    private const string BecomeAnother = "/usr/sbin/runuser";

    public static string Run(params string[] arguments)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() && Environment.UserName == "root" && File.Exists(BecomeAnother), "Needs root, to become somebody else.");
        var folder = Directory.CreateTempSubdirectory();
        File.SetUnixFileMode(folder.FullName, (UnixFileMode)0b111_101_101);
        try
        {
            // The checkout may lie where nobody else can read.
            using (var copy = Process.Start("cp", ["-r", Path.GetDirectoryName(typeof(DaemonConnection).Assembly.Location)!, Path.Combine(folder.FullName, "client")]))
                copy.WaitForExit();
            var start = new ProcessStartInfo(BecomeAnother, ["-u", "nobody", "--", Programs.Host, Path.Combine(folder.FullName, "client", "scalelink.dll"), .. arguments])
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
                Environment = { ["HOME"] = "/tmp", ["DOTNET_CLI_HOME"] = "/tmp" },
            };
            using var process = Process.Start(start)!;
            var error = process.StandardError.ReadToEndAsync();
            var said = process.StandardOutput.ReadToEnd() + error.Result;
            process.WaitForExit();
            return said;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
