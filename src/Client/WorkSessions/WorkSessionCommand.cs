using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;

namespace ScaleLink.Client.WorkSessions;

/// <summary><c>scalelink work-session</c>: the work session in the bay, from the prepared car to the last steps.</summary>
internal static class WorkSessionCommand
{
    public static Command Create(CommonOptions common, Shell shell)
    {
        var seconds = TimeLimit.Option("Ends after N seconds. Otherwise Ctrl-C ends it.");
        var once = new Option<bool>("--once") { Description = "Shows the session once." };
        var command = new Command("work-session", "The work session: what to do now, the trace, checks and findings. Steps are commands of their own.") { seconds, once };
        foreach (var step in SessionSteps.All(common, shell).Concat(SessionRecords.All(common, shell)))
            command.Subcommands.Add(step);
        command.SetAction(async (parsed, stop) =>
        {
            using var limit = TimeLimit.Start(parsed.GetValue(seconds), shell.Time, stop);
            await using var daemon = common.Connect(parsed, shell);
            if (parsed.GetValue(once))
                shell.Write(await daemon.Ask(o => daemon.WorkSessions.GetSessionAsync(new GetSessionRequest(), o), stop), parsed.GetValue(common.Json), r => SessionPage.Lines(r.Session, shell, shell.Size()));
            else
                await Follow(daemon, parsed.GetValue(common.Json), shell, limit.Token);
            return ExitCodes.Done;
        });
        return command;
    }

    private static async Task Follow(DaemonConnection daemon, bool json, Shell shell, CancellationToken stop)
    {
        try
        {
            using var screen = !json && shell.CanRedraw ? new LineScreen(shell) : null;
            string? written = null;
            await foreach (var view in new SessionFeed(daemon).WithCancellation(stop))
            {
                if (screen is not null)
                    screen.Show(SessionPage.Lines(view, shell, screen.Size));
                else if (view.Message is { } message && written != News(message.Session))
                    (written, _) = (News(message.Session), Write(shell, message, json));
            }
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // The end that was asked for.
        }
    }

    // A step, or something that the daemon found without one.
    private static string News(Session? session) => session is null ? "" : $"{session.Entry} {string.Join(' ', session.Findings.Select(f => f.Code))}";

    private static bool Write(Shell shell, GetSessionResponse message, bool json)
    {
        shell.Write(message, json, m => SessionPage.Lines(m.Session, shell, shell.Size()));
        return true;
    }
}
