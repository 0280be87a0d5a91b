using System.CommandLine;
using System.Globalization;
using System.IO.Ports;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;
using ScaleLink.Probing.Ports;
using ScaleLink.Probing.Recognition;
using ScaleLink.Probing.Search;
using ScaleLink.Probing.Toml;
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
            var slaves = parsed.GetValue(modbus) is { } list ? Addresses(list) : null;
            var settings = new SearchSettings
            {
                Listening = TimeSpan.FromSeconds(parsed.GetValue(seconds) ?? UsualSeconds),
                Baud = parsed.GetValue(baud),
                Parity = parsed.GetValue(parity) is { } bit ? Enum.Parse<Parity>(bit, ignoreCase: true) : null,
                Asking = slaves is null ? Asking.Never : Asking.Only,
                Slaves = slaves ?? [],
            };
            var finding = await new PortSearch(settings, shell.Time, new SystemTree()).Search([parsed.GetRequiredValue(port)], null, stop).SingleAsync(stop);
            if (finding.Trouble is { } trouble)
                throw new ClientException(trouble);
            // One slave is proposed: one that let itself be read, if any did.
            var found = finding.Found.FirstOrDefault(f => f is FoundSlave { Readable: not null }) ?? finding.Found[0];
            var proposal = BayBlock.Of(finding, found, parsed.GetValue(corner)!);
            if (parsed.GetValue(common.Json))
                shell.WriteJson(ProbeJson.Of(finding, found, proposal), ProbeTexts.Default.ProbeJson);
            else
                Write(finding, found, proposal, shell);
            return proposal is null ? ExitCodes.NotAchieved : ExitCodes.Done;
        });
        return command;
    }

    private static void Write(PortFinding finding, Found found, string? proposal, Shell shell)
    {
        var rate = finding.Baud is { } baud ? string.Create(CultureInfo.InvariantCulture, $"at {baud} bits a second") : "a pseudo-terminal, which has no bit rate";
        if (finding.Format.Words is { Length: > 0 } format)
            rate += $", {format}";
        shell.WriteLine($"{finding.Port}, {rate}: {found.Summary}.");
        foreach (var line in finding.Heard)
            shell.WriteLine($"  {line}");
        foreach (var remark in found.Remarks)
            shell.WriteLine($"- {remark}");
        if (proposal is null)
            return;
        shell.WriteLine("");
        shell.WriteLine("For the bay file:");
        shell.WriteLine("");
        shell.WriteLine(proposal);
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
