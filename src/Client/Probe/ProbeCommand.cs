using System.CommandLine;
using System.Globalization;
using System.IO.Ports;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Doctor;
using ScaleLink.Client.Runtime;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Client.Probe;

/// <summary><c>scalelink probe</c>: what an unknown device on a port speaks, and the block for the bay file.</summary>
internal static class ProbeCommand
{
    private const double UsualSeconds = 6;

    public static Command Create(CommonOptions common, Shell shell)
    {
        var port = new Argument<string>("port") { Description = "The serial port, such as /dev/serial/by-path/... or COM3." };
        var seconds = TimeLimit.Option("How long to listen at each rate. Otherwise 6, in which a pad says who it is.");
        var baud = new Option<int?>("--baud") { Description = "Only this rate. Otherwise the usual ones in turn.", HelpName = "N" };
        var parity = new Option<string?>("--parity") { Description = "Only this parity bit: none, even or odd. Otherwise none; slaves are asked with each in turn.", HelpName = "P" };
        parity.AcceptOnlyFromAmong("none", "even", "odd");
        var corner = new Option<string>("--corner") { Description = "The corner in the proposal.", DefaultValueFactory = _ => "LF", HelpName = "CORNER" };
        corner.AcceptOnlyFromAmong("LF", "RF", "LR", "RR");
        var modbus = new Option<string?>("--modbus") { Description = "Asks the Modbus slaves of these addresses, such as 1,2,11, for their first registers. Sends on the line: not while another master does.", HelpName = "LIST" };
        modbus.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } list && Addresses(list) is null)
                result.AddError("--modbus: give addresses from 1 to 247 with commas between.");
        });
        var command = new Command("probe", "Listens to a serial port, says what it hears, and proposes the block for the bay file. Sends nothing without --modbus.") { port, seconds, baud, parity, corner, modbus };
        command.SetAction(async (parsed, stop) =>
        {
            var probe = new PortProbe(parsed.GetRequiredValue(port), parsed.GetValue(parity) is { } bit ? Enum.Parse<Parity>(bit, ignoreCase: true) : null, shell.Time, new SystemTree());
            var slaves = parsed.GetValue(modbus) is { } list ? Addresses(list) : null;
            var report = await Task.Run(() => slaves is not null
                ? probe.Ask(slaves, parsed.GetValue(baud), parsed.GetValue(corner)!, stop)
                : probe.Listen(parsed.GetValue(baud), TimeSpan.FromSeconds(parsed.GetValue(seconds) ?? UsualSeconds), parsed.GetValue(corner)!, stop), CancellationToken.None);
            if (parsed.GetValue(common.Json))
                shell.WriteJson(ProbeJson.Of(report), ProbeTexts.Default.ProbeJson);
            else
                Write(report, shell);
            return report.Proposal is null ? ExitCodes.NotAchieved : ExitCodes.Done;
        });
        return command;
    }

    private static void Write(ProbeReport report, Shell shell)
    {
        var rate = report.Baud is { } baud ? string.Create(CultureInfo.InvariantCulture, $"at {baud} bits a second") : "a pseudo-terminal, which has no bit rate";
        if (report.Format.Words is { Length: > 0 } format)
            rate += $", {format}";
        shell.WriteLine($"{report.Port}, {rate}: {report.Guess.Summary}.");
        foreach (var line in report.Heard)
            shell.WriteLine($"  {line}");
        foreach (var remark in report.Guess.Remarks)
            shell.WriteLine($"- {remark}");
        if (report.Proposal is null)
            return;
        shell.WriteLine("");
        shell.WriteLine("For the bay file:");
        shell.WriteLine("");
        shell.WriteLine(report.Proposal);
    }

    private static List<byte>? Addresses(string list)
    {
        var addresses = new List<byte>();
        foreach (var part in list.Split(',', StringSplitOptions.TrimEntries))
        {
            if (!byte.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out var address) || address is < ModbusRequest.LowestSlave or > ModbusRequest.HighestSlave)
                return null;
            addresses.Add(address);
        }

        return addresses;
    }
}
