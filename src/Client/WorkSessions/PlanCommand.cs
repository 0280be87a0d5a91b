using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.WorkSessions;

/// <summary><c>scalelink plan</c>: what to turn next, and what it should do.</summary>
internal static class PlanCommand
{
    public static Command Create(CommonOptions common, Shell shell)
    {
        var refine = new Option<bool>("--refine") { Description = "Plans even when everything is within its tolerance." };
        var session = new Option<string>("--session") { Description = "Another session than the one in the bay.", HelpName = "ID", DefaultValueFactory = _ => "" };
        return new Command("plan", "What to turn next in the work session, and what it should do. Turns nothing and records nothing.") { refine, session }
            .Asks(common, shell,
                (daemon, options, parsed) => daemon.WorkSessions.PlanTurnsAsync(new PlanTurnsRequest { Refine = parsed.GetValue(refine), SessionId = parsed.GetValue(session) }, options),
                plan => PlanPage.Lines(plan, shell.Glyphs));
    }
}
