using System.CommandLine;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Demo;

/// <summary><c>scalelink demo</c>: a whole bay without hardware, and a crew that works in it.</summary>
internal static class DemoCommand
{
    public static Command Create(CommonOptions common, Shell shell)
    {
        var page = Port("--page-port", Ports.Default.Page, "page and gRPC-Web");
        var grpc = Port("--grpc-port", Ports.Default.Grpc, "gRPC");
        var mqtt = Port("--mqtt-port", Ports.Default.Mqtt, "the MQTT broker");
        var tcp = new Option<bool>("--tcp") { Description = "TCP between pads and daemon instead of pseudo-terminals. Always so on Windows." };
        var plain = new Option<bool>("--plain") { Description = "Lines of text; ends when the crew is done. Exit code 0 only if cross weight came on target in time." };
        var stay = new Option<bool>("--stay") { Description = "With --plain: keeps everything running after the crew is done." };
        var seconds = TimeLimit.Option("Ends after N seconds at the latest.");
        var seed = new Option<long?>("--seed") { Description = "Seed of the simulator's chance, to see the same run again.", HelpName = "N" };
        var command = new Command("demo", "Starts a simulated car on pads and a daemon, and shows a crew bringing cross weight on target.")
        {
            page, grpc, mqtt, tcp, plain, stay, seconds, seed,
        };
        command.SetAction(async (parsed, stop) =>
        {
            using var limit = TimeLimit.Start(parsed.GetValue(seconds), shell.Time, stop);
            var setup = new DemoSetup
            {
                Ports = new Ports(parsed.GetValue(page), parsed.GetValue(grpc), parsed.GetValue(mqtt)),
                Tcp = parsed.GetValue(tcp),
                Seed = parsed.GetValue(seed),
            };
            var json = parsed.GetValue(common.Json);
            return parsed.GetValue(plain) || json || !shell.CanRedraw
                ? await new DemoLines(shell, json).Run(setup, parsed.GetValue(stay), limit.Token)
                : await new DemoScreen(shell).Run(setup, limit.Token);
        });
        return command;
    }

    private static Option<int> Port(string name, int otherwise, string what)
    {
        var port = new Option<int>(name) { Description = $"Port of {what} on loopback; 0 takes a free one.", DefaultValueFactory = _ => otherwise, HelpName = "PORT" };
        port.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int>() is not (>= 0 and <= 65535))
                result.AddError($"{name}: give a port from 0 to 65535.");
        });
        return port;
    }
}
