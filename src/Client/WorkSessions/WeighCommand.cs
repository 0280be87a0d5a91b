using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.WorkSessions;

/// <summary><c>scalelink work-session weigh</c>: puts the settled reading on record.</summary>
internal static class WeighCommand
{
    public static Command Create(CommonOptions common, Shell shell)
    {
        var heights = CornerArguments.Four("--heights", "Measured ride heights, mm.");
        var note = new Option<string>("--note") { Description = "A word about it.", DefaultValueFactory = _ => "" };
        var who = WhoOption.Create(shell);
        var wait = new Option<double>("--wait") { Description = "Waits so many seconds for the car to settle.", HelpName = "SECONDS" };
        var command = new Command("weigh", "Puts the present settled reading on record: the baseline first, then one after each settle.") { heights, note, who, wait };
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.Connect(parsed, shell);
            if (parsed.GetValue(wait) is > 0 and var seconds)
                await Settled(daemon, shell, seconds, stop);
            var request = new WeighRequest { By = new StepBy { Who = parsed.GetValue(who) }, Note = parsed.GetValue(note), HeightsMm = CornerArguments.ReadFour(parsed.GetValue(heights)) };
            var session = await daemon.Ask(o => daemon.WorkSessionControl.WeighAsync(request, o), stop);
            shell.Write(session, parsed.GetValue(common.Json), s => SessionPage.Short(s, shell.Glyphs));
            return Surprises(session) ? ExitCodes.NotAchieved : ExitCodes.Done;
        });
        return command;
    }

    // The reading is on record either way; a script wants to know that somebody has to look.
    private static bool Surprises(Session session) => session.State == SessionState.Naming || session.Weighings is [.., { Causes.Count: > 0 }];

    // When the time is over the weighing is asked for all the same: the daemon says best what is missing.
    private static async Task Settled(DaemonConnection daemon, Shell shell, double seconds, CancellationToken stop)
    {
        using var limit = TimeLimit.Start(seconds, shell.Time, stop);
        try
        {
            await foreach (var view in new LoadsFeed(daemon).WithCancellation(limit.Token))
                if (view is { Freshness: Freshness.Live, Message.WeighingReady: true })
                    return;
        }
        catch (OperationCanceledException) when (!stop.IsCancellationRequested)
        {
            // The time is over.
        }
    }
}
