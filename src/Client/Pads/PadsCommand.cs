using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Json;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;

namespace ScaleLink.Client.Pads;

/// <summary><c>scalelink pads</c>: the pads and their health.</summary>
internal static class PadsCommand
{
    public static Command Create(CommonOptions common, Shell shell)
    {
        var watch = new Option<bool>("--watch") { Description = "Goes on, until Ctrl-C." };
        var seconds = TimeLimit.Option("With --watch: ends after N seconds.");
        var command = new Command("pads", "State, rate, load, tilt, zero and faults of every pad, and what to do about the faults.") { watch, seconds };
        command.SetAction(async (parsed, stop) =>
        {
            using var limit = TimeLimit.Start(parsed.GetValue(seconds), shell.Time, stop);
            await using var daemon = common.Connect(parsed, shell);
            var json = parsed.GetValue(common.Json);
            if (!parsed.GetValue(watch))
                Write(await Once(daemon, stop), json, shell);
            else
                await Follow(daemon, json, shell, limit.Token);
            return ExitCodes.Done;
        });
        return command;
    }

    private static async Task<Judged<ListPadsResponse>> Once(DaemonConnection daemon, CancellationToken stop)
    {
        var list = await daemon.Ask(options => daemon.Pads.ListPadsAsync(new ListPadsRequest(), options), stop);
        // Asked for just now and not buffered on the way: the answer is as old as its round trip.
        return new Judged<ListPadsResponse> { Freshness = Freshness.Live, Message = list, IsNew = true };
    }

    private static async Task Follow(DaemonConnection daemon, bool json, Shell shell, CancellationToken stop)
    {
        try
        {
            using var screen = !json && shell.CanRedraw ? new LineScreen(shell) : null;
            (Freshness, string?)? written = null;
            await foreach (var view in new PadsFeed(daemon).WithCancellation(stop))
            {
                var state = (view.Freshness, view.Trouble?.Code);
                if (screen is not null)
                    screen.Show(PadsPage.Lines(view, shell, screen.Size));
                else if (view.IsNew || state != written)
                    Write(view, json, shell);
                written = state;
            }
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // The end that was asked for.
        }
    }

    private static void Write(Judged<ListPadsResponse> view, bool json, Shell shell)
    {
        if (json)
            shell.WriteJson(PadsJson.Of(view), ClientJson.Default.PadsJson);
        else
            foreach (var line in PadsPage.Lines(view, shell, shell.Size()))
                shell.WriteLine(line);
    }
}
