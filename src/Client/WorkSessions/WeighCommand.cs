using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.WorkSessions;

/// <summary><c>scalelink work-session weigh</c>: puts the settled reading on record.</summary>
internal static class WeighCommand
{
    public static Command Create(CommonOptions common, Shell shell)
    {
        var heights = CornerArguments.Four("--heights", $"Measured ride heights, {shell.Glyphs.LengthSign()}.");
        var note = new Option<string>("--note") { Description = "A word about it.", DefaultValueFactory = _ => "" };
        var who = WhoOption.Create(shell);
        var wait = SettledWait.Option();
        var command = new Command("weigh", "Puts the present settled reading on record: the baseline first, then one after each settle.") { heights, note, who, wait };
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.Connect(parsed, shell);
            var request = new WeighRequest { By = new StepBy { Who = parsed.GetValue(who) }, Note = parsed.GetValue(note), HeightsMm = CornerArguments.ReadFour(parsed.GetValue(heights), shell.Glyphs.Units.Length.Factor) };
            var session = await SettledWait.Ask(daemon, shell.Time, parsed.GetValue(wait), s => daemon.Ask(o => daemon.WorkSessionControl.WeighAsync(request, o), s), stop);
            shell.Write(session, parsed.GetValue(common.Json), s => SessionPage.Short(s, shell.Glyphs));
            return Surprises(session) ? ExitCodes.NotAchieved : ExitCodes.Done;
        });
        return command;
    }

    // The reading is on record either way; a script wants to know that somebody has to look.
    private static bool Surprises(Session session) => session.State == SessionState.Naming || session.Weighings is [.., { Causes.Count: > 0 }];
}
