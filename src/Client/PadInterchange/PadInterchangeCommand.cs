using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.PadInterchange;

/// <summary><c>scalelink calibrations pad-interchange</c>: one car weighed with the pads interchanged.</summary>
internal static class PadInterchangeCommand
{
    private const string About = """
        Interchanges the pads under one car, four weighings in all, and tells how the pads depart from each other. Needs no masses;
        an error that all four share stays unseen, and no calibration changes.
        """;

    public static Command Create(CommonOptions common, Shell shell)
    {
        var command = new Command("pad-interchange", About);
        foreach (var part in (Command[])[Record(), ThrowAway(), Finish(), Abandon(), Show(), List(), Export(common, shell)])
            command.Subcommands.Add(part);
        return command;

        Command Record()
        {
            var (who, wait) = (WhoOption.Create(shell), SettledWait.Option());
            var record = new Command("record", "Weighs the car as it stands; the first one begins a pad interchange.") { who, wait };
            record.SetAction(async (parsed, stop) =>
            {
                await using var daemon = common.Connect(parsed, shell);
                var request = new RecordPlacementRequest { Who = parsed.GetValue(who) };
                var view = await SettledWait.Ask(daemon, shell.Time, parsed.GetValue(wait), s => daemon.Ask(o => daemon.PadInterchangeControl.RecordPlacementAsync(request, o), s), stop);
                shell.Write(view, parsed.GetValue(common.Json), v => InterchangePage.Lines(v, shell.Glyphs));
                return ExitCodes.Done;
            });
            return record;
        }

        Command ThrowAway()
        {
            var (who, number) = (WhoOption.Create(shell), new Argument<uint>("number") { Description = "Which weighing, as show numbers them." });
            return Steps(new Command("throw-away", "Throws one weighing away, to be taken again.") { number, who },
                (daemon, options, parsed) => daemon.PadInterchangeControl.ThrowPlacementAwayAsync(new ThrowPlacementAwayRequest { Number = parsed.GetValue(number), Who = parsed.GetValue(who) }, options));
        }

        Command Finish()
        {
            var (who, note) = (WhoOption.Create(shell), new Option<string>("--note") { Description = "Remark for the ledger.", DefaultValueFactory = _ => "", HelpName = "TEXT" });
            return Steps(new Command("finish", "Puts the outcome of four weighings on record.") { who, note },
                (daemon, options, parsed) => daemon.PadInterchangeControl.FinishInterchangeAsync(new FinishInterchangeRequest { Who = parsed.GetValue(who), Note = parsed.GetValue(note) }, options));
        }

        Command Abandon()
        {
            var (who, reason) = (WhoOption.Create(shell), new Argument<string>("reason") { Description = "Why, for the ledger." });
            return Steps(new Command("abandon", "Gives the pad interchange up.") { reason, who },
                (daemon, options, parsed) => daemon.PadInterchangeControl.AbandonInterchangeAsync(new AbandonInterchangeRequest { Who = parsed.GetValue(who), Reason = parsed.GetValue(reason) }, options));
        }

        Command Show()
        {
            var id = new Argument<string?>("id") { Description = "A pad interchange; none: the newest.", Arity = ArgumentArity.ZeroOrOne };
            return Steps(new Command("show", "How a pad interchange stands, and what comes next.") { id }, (daemon, options, parsed) =>
                daemon.PadInterchanges.GetInterchangeAsync(parsed.GetValue(id) is { } named ? new GetInterchangeRequest { InterchangeId = named } : new GetInterchangeRequest(), options));
        }

        Command List() => new Command("list", "Every pad interchange, newest first.").Asks(common, shell,
            (daemon, options, _) => daemon.PadInterchanges.ListInterchangesAsync(new ListInterchangesRequest(), options), InterchangePage.List);

        Command Steps(Command step, Func<DaemonConnection, Grpc.Core.CallOptions, ParseResult, Grpc.Core.AsyncUnaryCall<InterchangeView>> call) =>
            step.Asks(common, shell, call, view => InterchangePage.Lines(view, shell.Glyphs));
    }

    private static Command Export(CommonOptions common, Shell shell)
    {
        var id = new Argument<string>("id") { Description = "A pad interchange, as list names it." };
        var command = new Command("export", "A pad interchange as a file. A workshop's own record, no certificate for trade.") { id };
        var export = new ExportOptions(command);
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.Connect(parsed, shell);
            var request = new ExportInterchangeRequest { InterchangeId = parsed.GetValue(id), Format = export.Format(parsed) };
            var file = await daemon.Ask(o => daemon.PadInterchanges.ExportInterchangeAsync(request, o), stop);
            export.Write(parsed, shell, file.FileName, file.Content);
            return ExitCodes.Done;
        });
        return command;
    }
}
