using System.CommandLine;
using ScaleLink.Client.Connection;

namespace ScaleLink.Client.Commands;

/// <summary>Options of every command.</summary>
internal sealed class CommonOptions
{
    public Option<string> Daemon { get; } = new("--daemon")
    {
        Description = "Address of the daemon's gRPC port.",
        DefaultValueFactory = _ => DaemonConnection.DefaultAddress,
        HelpName = "URL",
        Recursive = true,
    };

    public Option<bool> Json { get; } = new("--json")
    {
        Description = "One JSON object instead of a picture; one a line where it goes on.",
        Recursive = true,
    };
}
