using System.Text.RegularExpressions;

namespace Client.Tests.Bay;

/// <summary>What a demo has on the machine: its folder, and the processes that use it.</summary>
internal static partial class DemoTraces
{
    public static readonly string[] FreePorts = ["--page-port", "0", "--grpc-port", "0", "--mqtt-port", "0"];

    public static async Task<string> Folder(ClientProcess demo) => FolderPattern().Match(await demo.LineWith("gRPC http")).Groups[1].Value;

    public static async Task NobodyUses(string folder)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        while (Users(folder).Count > 0)
            await Task.Delay(100, patience.Token);
    }

    // The children are those whose command line names the folder.
    public static List<(int Id, string Command)> Users(string folder)
    {
        var users = new List<(int, string)>();
        foreach (var entry in Directory.EnumerateDirectories("/proc"))
        {
            try
            {
                var command = File.ReadAllText(Path.Combine(entry, "cmdline")).Replace('\0', ' ');
                if (int.TryParse(Path.GetFileName(entry), out var id) && command.Contains(folder, StringComparison.Ordinal))
                    users.Add((id, command));
            }
            catch (IOException)
            {
                // It has ended in the meantime, or is no process.
            }
        }

        return users;
    }

    [GeneratedRegex(@"In (\S+): page")]
    private static partial Regex FolderPattern();
}
