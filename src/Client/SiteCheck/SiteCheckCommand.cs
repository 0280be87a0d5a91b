using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.SiteCheck;

/// <summary><c>scalelink patch site-check</c>: can loads be believed at a place that nobody has prepared?</summary>
internal static class SiteCheckCommand
{
    private const string About = """
        Watches the empty, zeroed pads for some minutes and tells to what size a cross weight, and a change of it, can be believed here.
        One that is under way is shown on; Ctrl-C leaves it going. Ends with 0 when readings can at least be compared.
        """;

    public static Command Create(CommonOptions common, Shell shell)
    {
        var minutes = new Option<double>("--minutes") { Description = "How long, 2 to 30.", DefaultValueFactory = _ => 10, HelpName = "N" };
        var total = new Option<double?>("--total") { Description = $"Of the car that is expected, {shell.Glyphs.MassSign()}; otherwise as the last car that settled here.", HelpName = "TOTAL" };
        var last = new Option<bool>("--last") { Description = "Shows the newest outcome and starts nothing." };
        var end = new Option<bool>("--stop") { Description = "Ends the watch that is under way; what was seen is kept." };
        var who = WhoOption.Create(shell);
        var command = new Command("site-check", About) { minutes, total, last, end, who };
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.Connect(parsed, shell);
            var json = parsed.GetValue(common.Json);
            var watching = new SiteCheckWatching(daemon, shell, json);
            if (parsed.GetValue(end))
                return watching.Tell(await daemon.Ask(o => daemon.SiteCheckControl.StopSiteCheckAsync(new StopSiteCheckRequest { Who = parsed.GetValue(who) }, o), stop));
            var view = await watching.Ask(stop);
            if (parsed.GetValue(last))
                return watching.Tell(view);
            if (view.Now is null)
                view = await daemon.Ask(o => daemon.SiteCheckControl.StartSiteCheckAsync(Request(), o), stop);
            if (!json)
                shell.WriteLine($"Caution: {PeerText.Clean(view.Caution, 400)}");
            return await watching.Run(view, stop);

            StartSiteCheckRequest Request()
            {
                var request = new StartSiteCheckRequest { Minutes = parsed.GetValue(minutes), Who = parsed.GetValue(who) };
                if (parsed.GetValue(total) is { } asked)
                    request.TotalKg = asked * shell.Glyphs.Units.Mass.Factor;
                return request;
            }
        });
        return command;
    }
}
