using System.CommandLine;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Commands;

/// <summary>Options of every command.</summary>
internal sealed class CommonOptions(Shell shell)
{
    public Option<string> Daemon { get; } = new("--daemon")
    {
        Description = "Address of the daemon's gRPC port; remembered for the next commands.",
        DefaultValueFactory = _ => shell.Memory?.Read().Daemon ?? DaemonConnection.DefaultAddress,
        HelpName = "URL",
        Recursive = true,
    };

    public Option<bool> Json { get; } = new("--json")
    {
        Description = "One JSON object instead of a picture; one a line where it goes on.",
        Recursive = true,
    };

    /// <summary>In which units people read and write; see <see cref="UnitsOption"/>.</summary>
    public Option<string> Units { get; } = UnitsOption.Create(shell);

    /// <summary>The way to the daemon that was named. A step that is answered late is told of at once, beside the output.</summary>
    public DaemonConnection Connect(ParseResult parsed, Shell shell)
    {
        var daemon = ConnectSilently(parsed, shell);
        daemon.AnswerLate += () => shell.Error.WriteLine("scalelink: no answer yet; asking the daemon whether the step is on record.");
        return daemon;
    }

    /// <summary>The same for who draws on the whole screen.</summary>
    public DaemonConnection ConnectSilently(ParseResult parsed, Shell shell) => new(parsed.GetValue(Daemon)!, shell.Time);
}
