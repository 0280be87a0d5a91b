using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Proving;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Commands;

/// <summary><c>scalelink proofs rotation</c>: one car weighed with the pads moved round.</summary>
internal static class RotationCommand
{
    private const string About = """
        Moves the pads round under one car, four weighings in all, and tells how the pads depart from each other. Needs no masses;
        an error that all four share stays unseen, and no calibration changes.
        """;

    private static readonly Dictionary<string, ExportFormat> Formats = new() { ["csv"] = ExportFormat.Csv, ["json"] = ExportFormat.Json, ["html"] = ExportFormat.Html };

    public static Command Create(CommonOptions common, Shell shell)
    {
        var command = new Command("rotation", About);
        foreach (var part in (Command[])[Record(), ThrowAway(), Finish(), Abandon(), Show(), List(), Export(common, shell)])
            command.Subcommands.Add(part);
        return command;

        Command Record()
        {
            var who = WhoOption.Create();
            return Steps(new Command("record", "Weighs the car as it stands; the first one begins a rotation.") { who },
                (daemon, options, parsed) => daemon.RotationControl.RecordPlacementAsync(new RecordPlacementRequest { Who = parsed.GetValue(who) }, options));
        }

        Command ThrowAway()
        {
            var (who, number) = (WhoOption.Create(), new Argument<uint>("number") { Description = "Which weighing, as show numbers them." });
            return Steps(new Command("throw-away", "Throws one weighing away, to be taken again.") { number, who },
                (daemon, options, parsed) => daemon.RotationControl.ThrowPlacementAwayAsync(new ThrowPlacementAwayRequest { Number = parsed.GetValue(number), Who = parsed.GetValue(who) }, options));
        }

        Command Finish()
        {
            var (who, note) = (WhoOption.Create(), new Option<string>("--note") { Description = "Remark for the ledger.", DefaultValueFactory = _ => "", HelpName = "TEXT" });
            return Steps(new Command("finish", "Puts the outcome of four weighings on record.") { who, note },
                (daemon, options, parsed) => daemon.RotationControl.FinishRotationAsync(new FinishRotationRequest { Who = parsed.GetValue(who), Note = parsed.GetValue(note) }, options));
        }

        Command Abandon()
        {
            var (who, reason) = (WhoOption.Create(), new Argument<string>("reason") { Description = "Why, for the ledger." });
            return Steps(new Command("abandon", "Gives the rotation up.") { reason, who },
                (daemon, options, parsed) => daemon.RotationControl.AbandonRotationAsync(new AbandonRotationRequest { Who = parsed.GetValue(who), Reason = parsed.GetValue(reason) }, options));
        }

        Command Show()
        {
            var id = new Argument<string?>("id") { Description = "A rotation; none: the newest.", Arity = ArgumentArity.ZeroOrOne };
            return Steps(new Command("show", "How a rotation stands, and what comes next.") { id }, (daemon, options, parsed) =>
                daemon.Rotations.GetRotationAsync(parsed.GetValue(id) is { } named ? new GetRotationRequest { RotationId = named } : new GetRotationRequest(), options));
        }

        Command List() => new Command("list", "Every rotation, newest first.").Asks(common, shell,
            (daemon, options, _) => daemon.Rotations.ListRotationsAsync(new ListRotationsRequest(), options), RotationPage.List);

        Command Steps(Command step, Func<DaemonConnection, Grpc.Core.CallOptions, ParseResult, Grpc.Core.AsyncUnaryCall<RotationView>> call) =>
            step.Asks(common, shell, call, view => RotationPage.Lines(view, shell.Glyphs));
    }

    private static Command Export(CommonOptions common, Shell shell)
    {
        var id = new Argument<string>("id") { Description = "A rotation, as list names it." };
        var format = new Option<string>("--format") { Description = "csv, json, or html: a sheet for printing.", DefaultValueFactory = _ => "html" };
        format.AcceptOnlyFromAmong([.. Formats.Keys]);
        var output = new Option<string>("--out") { Description = "Where to write it; - for standard output.", Required = true, HelpName = "FILE" };
        var command = new Command("export", "Writes a report of a rotation. A workshop's own record, no certificate for trade.") { id, format, output };
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = new DaemonConnection(parsed.GetValue(common.Daemon)!, shell.Time);
            var request = new ExportRotationRequest { RotationId = parsed.GetValue(id), Format = Formats[parsed.GetValue(format)!] };
            await ReportFile.Save(await daemon.Ask(o => daemon.Rotations.ExportRotationAsync(request, o), stop), shell, parsed.GetValue(output)!, stop);
            return ExitCodes.Done;
        });
        return command;
    }
}
