using System.CommandLine;
using ScaleLink.Daemon.Hosting;

var bay = new Option<string>("--bay") { Description = "The bay file.", DefaultValueFactory = _ => "bay.toml" };
var page = new Option<int?>("--page-port") { Description = "Port of page and gRPC-Web, instead of listen.page_port." };
var grpc = new Option<int?>("--grpc-port") { Description = "Port of gRPC, instead of listen.grpc_port." };
var mqtt = new Option<int?>("--mqtt-port") { Description = "Port of the broker, instead of mqtt.port." };
var allowMissing = new Option<bool>("--allow-missing") { Description = "Start although a pad's port is not there: it is opened when it comes." };
var check = new Option<bool>("--check") { Description = "Only check the bay file." };
var takeOver = new Option<string?>("--take-over") { Description = "Only count again what holds by itself behind a damage of the ledger; takes the name of whoever decides it." };
var exitWithStdin = new Option<bool>("--exit-with-stdin") { Description = "Stop when standard input closes, so as not to outlive the program that started this one." };

var root = new RootCommand("ScaleLink daemon: reads scale pads and publishes corner loads.") { bay, page, grpc, mqtt, allowMissing, check, takeOver, exitWithStdin };
root.SetAction((parsed, stop) => DaemonHost.Run(new StartOptions
{
    BayFile = parsed.GetRequiredValue(bay),
    PagePort = parsed.GetValue(page),
    GrpcPort = parsed.GetValue(grpc),
    MqttPort = parsed.GetValue(mqtt),
    AllowMissing = parsed.GetValue(allowMissing),
    CheckOnly = parsed.GetValue(check),
    TakeOverBy = parsed.GetValue(takeOver),
    ExitWithStdin = parsed.GetValue(exitWithStdin),
}, stop));
return await root.Parse(args).InvokeAsync();
