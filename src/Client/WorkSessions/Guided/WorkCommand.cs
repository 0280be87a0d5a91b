using System.CommandLine;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.WorkSessions.Guided;

/// <summary><c>scalelink work</c>: the session in the bay, one key a step.</summary>
internal static class WorkCommand
{
    public static Command Create(CommonOptions common, Shell shell)
    {
        var who = WhoOption.Create(shell);
        var command = new Command("work", "Guides through a work session: it says what comes next and takes one key for it. Scripts use work-session.") { who };
        command.SetAction(async (parsed, stop) =>
        {
            if (!shell.CanRedraw)
                throw new ClientException(new Diagnostic(ClientCodes.NeedsTerminal, "The guided session needs a terminal.", "Run it in one, or use scalelink work-session with its steps."));
            await using var daemon = common.ConnectSilently(parsed, shell);
            var last = await new GuidedScreen(shell, daemon, parsed.GetValue(who)!).Run(stop);
            if (last is not null)
                foreach (var line in SessionPage.Short(last, shell.Glyphs))
                    shell.WriteLine(line);
            return ExitCodes.Done;
        });
        return command;
    }
}
