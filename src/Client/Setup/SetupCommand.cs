using System.CommandLine;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Setup;

/// <summary><c>scalelink setup</c>: from pads that nobody has described to live loads.</summary>
internal static class SetupCommand
{
    private const string About = """
        Sets a bay up: finds the pads, sees which is which when somebody steps on each, writes the bay file, takes the zero and calibrates.
        Starts the daemon by itself where none answers. Questions are asked one by one; a script answers them on standard input.
        """;

    public static Command Create(CommonOptions common, Shell shell)
    {
        var file = new Option<string>("--bay") { Description = "Where the bay file will be.", DefaultValueFactory = _ => "bay.toml", HelpName = "FILE" };
        var ports = new Option<string[]>("--ports") { Description = "Ports to search. None: every USB adapter that is plugged in.", HelpName = "PORT", AllowMultipleArgumentsPerToken = true };
        var page = new Option<int?>("--page-port") { Description = "Port of the page.", HelpName = "PORT" };
        var mqtt = new Option<int?>("--mqtt-port") { Description = "Port of the broker.", HelpName = "PORT" };
        var who = WhoOption.Create(shell);
        var command = new Command("setup", About) { file, ports, page, mqtt, who };
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.ConnectSilently(parsed, shell);
            await using var bay = await SetupDaemon.Find(daemon, new SetupDaemonOptions(parsed.GetValue(file)!, parsed.GetValue(page), parsed.GetValue(mqtt)), shell, stop);
            var dialog = new Dialog(shell);
            var search = new DeviceSearch(daemon, dialog, shell, parsed.GetValue(who)!);
            if (!await search.Run(parsed.GetValue(ports) ?? [], stop))
                return ExitCodes.NotAchieved;
            await new CornerGuide(daemon, dialog, shell, parsed.GetValue(who)!).Run(stop);
            await new FileGuide(daemon, dialog, shell, parsed.GetValue(who)!).Run(stop);
            return await new FirstLoads(daemon, dialog, shell, parsed.GetValue(who)!).Run(bay.IsOurs ? parsed.GetValue(file) : null, stop);
        });
        return command;
    }
}
