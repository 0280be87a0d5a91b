using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Connection;
using ScaleLink.Client.PadInterchange;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Calibration;

/// <summary><c>scalelink calibrations</c>: calibrations and the calibration procedures behind them.</summary>
internal static class CalibrationsCommand
{
    private const int LongestNumber = 12;

    public static Command Create(CommonOptions common, Shell shell)
    {
        var command = new Command("calibrations", "Calibrations of the pads, and the calibration procedures that made them.");
        foreach (var part in (Command[])[List(common, shell), Show(common, shell), Compare(common, shell), Readopt(common, shell), Export(common, shell), PadInterchangeCommand.Create(common, shell)])
            command.Subcommands.Add(part);
        return command;
    }

    private static Command List(CommonOptions common, Shell shell)
    {
        var corners = new Argument<string[]>("corner") { Description = "LF, RF, LR, RR. None: every pad that the ledger knows.", Arity = new ArgumentArity(0, 4) };
        corners.AcceptOnlyFromAmong("LF", "RF", "LR", "RR");
        var command = new Command("list", "Every calibration, newest first; the one in effect is marked.") { corners };
        return Acts(command, common, shell, async (daemon, parsed, json, stop) =>
        {
            var request = new ListCalibrationsRequest();
            request.Corners.AddRange(parsed.GetValue(corners)!.Select(WireCorners.Named));
            var list = await daemon.Ask(o => daemon.CalibrationProcedures.ListCalibrationsAsync(request, o), stop);
            if (json)
                shell.WriteJson(new CalibrationsJson([.. list.Calibrations.Select(c => CalibrationJson.Of(c)!)]), ProcedureTexts.Default.CalibrationsJson);
            else
                foreach (var line in CalibrationLines.List(list.Calibrations, shell.Glyphs))
                    shell.WriteLine(line);
        });
    }

    private static Command Show(CommonOptions common, Shell shell)
    {
        var id = Id("id");
        return Acts(new Command("show", "One calibration and what its calibration procedure found.") { id }, common, shell, async (daemon, parsed, json, stop) =>
        {
            var detail = await daemon.Ask(o => daemon.CalibrationProcedures.GetCalibrationAsync(new GetCalibrationRequest { Id = parsed.GetValue(id)! }, o), stop);
            if (json)
                shell.WriteJson(CalibrationJson.Of(detail.Calibration)!, ProcedureTexts.Default.CalibrationJson);
            else
                foreach (var line in CalibrationLines.Show(detail, shell.Glyphs))
                    shell.WriteLine(line);
        });
    }

    private static Command Compare(CommonOptions common, Shell shell)
    {
        var (before, now) = (Id("before"), Id("now"));
        return Acts(new Command("compare", "What moved from one calibration of a pad to another.") { before, now }, common, shell, async (daemon, parsed, json, stop) =>
        {
            var request = new CompareCalibrationsRequest { BeforeId = parsed.GetValue(before)!, NowId = parsed.GetValue(now)! };
            var found = await daemon.Ask(o => daemon.CalibrationProcedures.CompareCalibrationsAsync(request, o), stop);
            if (json)
                shell.WriteJson(CalibrationLines.Json(found), ProcedureTexts.Default.ComparisonJson);
            else
                foreach (var line in CalibrationLines.Compare(found, shell.Glyphs))
                    shell.WriteLine(line);
        });
    }

    private static Command Readopt(CommonOptions common, Shell shell)
    {
        var id = Id("id");
        var who = WhoOption.Create(shell);
        var note = new Option<string>("--note") { Description = "Remark for the ledger.", DefaultValueFactory = _ => "", HelpName = "TEXT" };
        return Acts(new Command("readopt", "Puts an older calibration into effect again.") { id, who, note }, common, shell, async (daemon, parsed, json, stop) =>
        {
            var request = new ReadoptCalibrationRequest { Id = parsed.GetValue(id)!, Who = parsed.GetValue(who)!, Note = parsed.GetValue(note)! };
            var adopted = await daemon.Ask(o => daemon.CalibrationProcedureControl.ReadoptCalibrationAsync(request, o), stop);
            if (json)
                shell.WriteJson(CalibrationJson.Of(adopted)!, ProcedureTexts.Default.CalibrationJson);
            else
                shell.WriteLine($"Calibration {CalibrationLines.Number(adopted)} of {PeerText.Clean(adopted.SerialNumber, 40)} is in effect again.");
        });
    }

    private static Command Export(CommonOptions common, Shell shell)
    {
        var procedure = new Argument<string>("procedure") { Description = "Number of a calibration, or of a calibration procedure that gave none; or its identity, its first six digits or more." };
        var command = new Command("export", "A calibration procedure as a file. A workshop's own record, no certificate for trade.") { procedure };
        var export = new ExportOptions(command);
        return Acts(command, common, shell, async (daemon, parsed, _, stop) =>
        {
            var named = parsed.GetValue(procedure)!;
            var request = new ExportProcedureRequest { Format = export.Format(parsed) };
            // Numbers of calibration procedures are short and decimal, identities are long.
            if (named.Length <= LongestNumber && named.All(char.IsAsciiDigit))
                request.ProcedureId = named;
            else
                request.CalibrationId = named;
            var file = await daemon.Ask(o => daemon.CalibrationProcedures.ExportProcedureAsync(request, o), stop);
            export.Write(parsed, shell, file.FileName, file.Content);
        });
    }

    private static Argument<string> Id(string name) => new(name) { Description = "Number of a calibration, as list shows it; or its identity, its first six digits or more." };

    private static Command Acts(Command command, CommonOptions common, Shell shell, Func<DaemonConnection, ParseResult, bool, CancellationToken, Task> act)
    {
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.Connect(parsed, shell);
            await act(daemon, parsed, parsed.GetValue(common.Json), stop);
            return ExitCodes.Done;
        });
        return command;
    }
}
