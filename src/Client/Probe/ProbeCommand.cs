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

/// <summary><c>scalelink probe</c>: what unknown devices on serial ports speak, and their blocks for the bay file.</summary>
internal static class ProbeCommand
{
    private const string AllSlaves = "all";

    public static Command Create(CommonOptions common, Shell shell)
    {
        var ports = new Argument<string[]>("port") { Description = "Serial ports, such as /dev/serial/by-path/... or COM3. None: every adapter that is plugged in.", Arity = ArgumentArity.ZeroOrMore };
        var seconds = TimeLimit.Option("How long to listen. Otherwise 6, in which a pad says who it is.");
        var baud = new Option<int?>("--baud") { Description = "Only this rate. Otherwise the usual ones in turn.", HelpName = "N" };
        var parity = new Option<string?>("--parity") { Description = "Only this parity bit: none, even or odd. Otherwise each in turn.", HelpName = "P" };
        parity.AcceptOnlyFromAmong("none", "even", "odd");
        var corner = new Option<string?>("--corner") { Description = "The corner in the proposal; further devices get the ones behind it. Otherwise LF.", HelpName = "CORNER" };
        corner.AcceptOnlyFromAmong("LF", "RF", "LR", "RR");
        var modbus = new Option<string?>("--modbus") { Description = "Asks the Modbus slaves of these addresses, such as 1,2,11, for their registers; all: looks for every slave from 1 to 247 on ports on which nothing is heard. Sends on the line: not while another master does.", HelpName = "LIST" };
        modbus.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } list && list != AllSlaves && Addresses(list) is null)
                result.AddError("--modbus: give addresses from 1 to 247 with commas between, or all.");
        });
        var atMost = new Option<double?>("--at-most") { Description = "How many seconds to look for slaves on a port at most. Otherwise 240.", HelpName = "N" };
        atMost.Validators.Add(result =>
        {
            if (result.Tokens.Count > 0 && result.GetValueOrDefault<double?>() is not (> 0 and <= 1e6))
                result.AddError("--at-most: give a number of seconds above 0.");
        });
        var rates = new Option<bool>("--rates") { Description = "Tries rates and parities on a pseudo-terminal too, for simulators that heed them." };
        var command = new Command("probe", "Listens to serial ports, says what it hears, and proposes blocks for the bay file. Sends nothing without --modbus.") { ports, seconds, baud, parity, corner, modbus, atMost, rates };
        command.SetAction(async (parsed, stop) =>
        {
            var usual = new SearchSettings();
            var list = parsed.GetValue(modbus);
            var settings = usual with
            {
                Listening = parsed.GetValue(seconds) is { } s ? TimeSpan.FromSeconds(s) : usual.Listening,
                Baud = parsed.GetValue(baud),
                Parity = parsed.GetValue(parity) is { } bit ? Enum.Parse<Parity>(bit, ignoreCase: true) : null,
                Asking = list is null ? Asking.Never : list == AllSlaves ? Asking.WhereSilent : Asking.Only,
                Slaves = list is null or AllSlaves ? [] : Addresses(list)!,
                AskingAtMost = parsed.GetValue(atMost) is { } most ? TimeSpan.FromSeconds(most) : usual.AskingAtMost,
                TerminalsHaveRates = parsed.GetValue(rates),
            };
            var isJson = parsed.GetValue(common.Json);
            var findings = await Search(parsed.GetValue(ports) ?? [], settings, isJson, shell, stop);
            return Tell(findings, new BayBlocks(parsed.GetValue(corner) ?? "LF", parsed.GetValue(corner) is not null), isJson, shell);
        });
        return command;
    }

    // In the order in which the ports were named, so that corners follow it.
    private static async Task<IReadOnlyList<PortFinding>> Search(string[] named, SearchSettings settings, bool isJson, Shell shell, CancellationToken stop)
    {
        var tree = new SystemTree();
        string[] ports = named.Length > 0 ? named : [.. SerialPorts.Adapters(tree).Select(a => a.Asked)];
        if (ports.Length == 0)
            throw new ClientException(new Diagnostic(ProbeCodes.PortMissing, "No serial adapter is plugged in.", "Plug one in, or name the port."));
        var search = new PortSearch(settings, shell.Time, tree);
        var findings = await search.Search(ports, isJson ? null : new ProgressLines(shell), stop).ToListAsync(stop);
        return findings is [{ Trouble: { } trouble }] ? throw new ClientException(trouble) : [.. findings.OrderBy(f => Array.IndexOf(ports, f.Port))];
    }

    private static int Tell(IReadOnlyList<PortFinding> findings, BayBlocks blocks, bool isJson, Shell shell)
    {
        var proposals = new List<string>();
        foreach (var finding in findings)
        {
            var answered = isJson ? finding : new LoadQuestion(shell).Ask(finding, () => ProbePage.Write(finding, shell));
            var proposal = blocks.Of(answered);
            if (isJson)
                shell.WriteJson(ProbeJson.Of(answered, proposal), ProbeTexts.Default.ProbeJson);
            if (proposal is not null)
                proposals.Add(proposal);
        }

        if (proposals.Count > 0 && !isJson)
            ProbePage.Write(proposals, shell);
        return proposals.Count == 0 ? ExitCodes.NotAchieved : ExitCodes.Done;
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

    private sealed class ProgressLines(Shell shell) : IProgress<SearchProgress>
    {
        public void Report(SearchProgress value) => shell.Error.WriteLine($"scalelink: {value.Port} {value.Doing}");
    }
}
