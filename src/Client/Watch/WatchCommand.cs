using System.CommandLine;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Watch;

/// <summary><c>scalelink watch</c>: the live loads.</summary>
internal static class WatchCommand
{
    public static Command Create(CommonOptions common, Shell shell)
    {
        var rate = new Option<double>("--rate") { Description = "Messages a second, 0.1 to 20.", DefaultValueFactory = _ => 10, HelpName = "HZ" };
        rate.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<double>() is not (>= 0.1 and <= 20))
                result.AddError("--rate: give 0.1 to 20 messages a second.");
        });
        var seconds = TimeLimit.Option("Ends after N seconds. Otherwise Ctrl-C ends it.");
        var plain = new Option<bool>("--plain") { Description = "Lines of text instead of a picture: one at every change, and one a second." };
        var command = new Command("watch", "Live cross weight, corner loads and the pads' health.") { rate, seconds, plain };
        command.SetAction(async (parsed, stop) =>
        {
            using var limit = TimeLimit.Start(parsed.GetValue(seconds), shell.Time, stop);
            await using var daemon = common.ConnectSilently(parsed, shell);
            try
            {
                if (parsed.GetValue(common.Json))
                    await LoadsWriting.Json(daemon, shell, parsed.GetValue(rate), limit.Token);
                else if (parsed.GetValue(plain) || !shell.CanRedraw)
                    await LoadsWriting.Plain(daemon, shell, parsed.GetValue(rate), limit.Token);
                else
                    await new WatchScreen(shell, daemon).Run(parsed.GetValue(rate), limit.Token);
            }
            catch (OperationCanceledException) when (limit.IsCancellationRequested)
            {
                // The end that was asked for.
            }

            return ExitCodes.Done;
        });
        return command;
    }
}
