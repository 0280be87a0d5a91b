using System.CommandLine;
using Grpc.Core;
using ScaleLink.Api.V1;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.WorkSessions;

/// <summary>The steps of a work session as commands. Each is in the daemon's ledger before it answers.</summary>
internal static class SessionSteps
{
    public static IEnumerable<Command> All(CommonOptions common, Shell shell) =>
    [
        Start(common, shell), Check(common, shell), WeighCommand.Create(common, shell), Turn(common, shell), Undo(common, shell), Correct(common, shell),
        Simple(common, shell, "confirm", "The newest step surprised, nothing was found wrong: it is believed.", (d, o, by) => d.WorkSessionControl.ConfirmStepAsync(new ConfirmStepRequest { By = by }, o)),
        Simple(common, shell, "check-rest", "Ticks all checks that are open together; recorded as not individually confirmed.", (d, o, by) => d.WorkSessionControl.TickRemainingAsync(new TickRemainingRequest { By = by }, o)),
        Simple(common, shell, "cautions-read", "Says that the cautions of the session were read; once for each name.", (d, o, by) => d.WorkSessionControl.AcknowledgeCautionsAsync(new AcknowledgeCautionsRequest { By = by }, o)),
        Name(common, shell), Heights(common, shell), Finish(common, shell), Abandon(common, shell),
    ];

    /// <summary>Lets a command take one step and show the session after it.</summary>
    public static Command Steps(this Command command, CommonOptions common, Shell shell, Func<DaemonConnection, CallOptions, ParseResult, StepBy, AsyncUnaryCall<Session>> step)
    {
        var who = WhoOption.Create(shell);
        command.Options.Add(who);
        return command.Asks(common, shell, (daemon, options, parsed) => step(daemon, options, parsed, new StepBy { Who = parsed.GetValue(who) }), session => SessionPage.Short(session, shell.Glyphs));
    }

    private static Command Simple(CommonOptions common, Shell shell, string name, string description, Func<DaemonConnection, CallOptions, StepBy, AsyncUnaryCall<Session>> step) =>
        new Command(name, description).Steps(common, shell, (daemon, options, _, by) => step(daemon, options, by));

    private static Command Start(CommonOptions common, Shell shell)
    {
        var title = new Option<string>("--title") { Description = "What it is about, for the list.", DefaultValueFactory = _ => "" };
        var target = new Option<double?>("--target") { Description = "Cross weight (RF + LR) / total, percent. Otherwise the car's.", HelpName = "PERCENT" };
        var tolerance = new Option<double?>("--tolerance") { Description = "Half width of the band around it, percent.", HelpName = "PERCENT" };
        var leaveOut = new Option<string[]>("--leave-out") { Description = "Checks that do not matter today.", HelpName = "KEY", AllowMultipleArgumentsPerToken = true };
        return new Command("start", "Begins a session with the car in the bay.") { title, target, tolerance, leaveOut }.Steps(common, shell, (daemon, options, parsed, by) =>
        {
            var request = new StartSessionRequest { By = by, Title = parsed.GetValue(title) };
            if (parsed.GetValue(target) is { } percent)
                request.TargetCrossWeightPercent = percent;
            if (parsed.GetValue(tolerance) is { } band)
                request.TargetTolerancePercent = band;
            request.LeaveOut.AddRange(parsed.GetValue(leaveOut) ?? []);
            return daemon.WorkSessionControl.StartSessionAsync(request, options);
        });
    }

    private static Command Check(CommonOptions common, Shell shell)
    {
        var key = new Argument<string>("key") { Description = "Which check; scalelink work-session --once lists them." };
        var value = new Option<string>("--value") { Description = "What was found or set.", DefaultValueFactory = _ => "" };
        var skip = new Option<string?>("--skip") { Description = "Leaves it out, with the reason.", HelpName = "REASON" };
        var open = new Option<bool>("--open") { Description = "Takes the tick back." };
        return new Command("check", "Ticks a check of the preparation or a last step.") { key, value, skip, open }.Steps(common, shell, (daemon, options, parsed, by) =>
            daemon.WorkSessionControl.SetCheckAsync(new SetCheckRequest
            {
                By = by, Key = parsed.GetValue(key), Value = parsed.GetValue(value), Done = parsed.GetValue(skip) is null && !parsed.GetValue(open),
                Skip = parsed.GetValue(skip) is not null, Note = parsed.GetValue(skip) ?? "",
            }, options));
    }

    private static Command Turn(CommonOptions common, Shell shell)
    {
        var turns = CornerArguments.Pairs("What was turned, up positive: RF 0.5 LR -0.25.");
        var planned = new Option<bool>("--as-planned") { Description = "The plan's turns." };
        return new Command("turn", "Puts on record what was turned, and predicts what it should do.") { turns, planned }.Steps(common, shell, (daemon, options, parsed, by) =>
            daemon.WorkSessionControl.RecordAdjustmentAsync(new RecordAdjustmentRequest
            {
                By = by, AsPlanned = parsed.GetValue(planned), Turns = parsed.GetValue(planned) ? null : CornerArguments.ReadPairs(parsed.GetValue(turns)!),
            }, options));
    }

    private static Command Undo(CommonOptions common, Shell shell)
    {
        var corner = new Argument<string?>("corner") { Description = "Only what was recorded last at this corner.", Arity = ArgumentArity.ZeroOrOne };
        corner.AcceptOnlyFromAmong("LF", "RF", "LR", "RR");
        return new Command("undo", "Takes back what was recorded last, as long as nothing was weighed after it.") { corner }.Steps(common, shell, (daemon, options, parsed, by) =>
            daemon.WorkSessionControl.UndoAdjustmentAsync(new UndoAdjustmentRequest { By = by, Corner = parsed.GetValue(corner) is { } one ? WireCorners.Named(one) : Corner.Unspecified }, options));
    }

    private static Command Correct(CommonOptions common, Shell shell)
    {
        var weighing = new Argument<uint>("weighing") { Description = "Number of the weighing after the turns; scalelink work-session --once shows the newest." };
        var turns = CornerArguments.Pairs("What was really turned before it, all of it, up positive: LF 1.5. Without any: nothing was.");
        return new Command("correct", "Puts right what was written of turns that are weighed already; what was written stays on record.") { weighing, turns }.Steps(common, shell, (daemon, options, parsed, by) =>
            daemon.WorkSessionControl.CorrectTurnsAsync(new CorrectTurnsRequest { By = by, Weighing = parsed.GetValue(weighing), Turns = CornerArguments.ReadPairs(parsed.GetValue(turns) ?? []) }, options));
    }

    private static Command Name(CommonOptions common, Shell shell)
    {
        var turns = CornerArguments.Pairs("Turns that were made after all: RF 0.5.");
        var other = new Option<string?>("--other") { Description = "Something else changed: ballast, a driver, tyres.", HelpName = "WHAT" };
        return new Command("name", "Names a change that nobody recorded: turns, --other WHAT, or neither when nothing was changed.") { turns, other }.Steps(common, shell, (daemon, options, parsed, by) =>
        {
            var request = new NameChangeRequest { By = by };
            if (parsed.GetValue(other) is { } what)
                request.Other = what;
            else if (parsed.GetValue(turns) is { Length: > 0 } made)
                request.Turns = CornerArguments.ReadPairs(made);
            else
                request.Nothing = true;
            return daemon.WorkSessionControl.NameChangeAsync(request, options);
        });
    }

    private static Command Heights(CommonOptions common, Shell shell)
    {
        var four = new Argument<double[]>("heights") { Description = $"Ride heights LF RF LR RR, {shell.Glyphs.LengthSign()}.", Arity = new ArgumentArity(4, 4) };
        return new Command("heights", "Enters measured ride heights.") { four }.Steps(common, shell, (daemon, options, parsed, by) =>
            daemon.WorkSessionControl.EnterHeightsAsync(new EnterHeightsRequest { By = by, HeightsMm = CornerArguments.ReadFour(parsed.GetValue(four), shell.Glyphs.Units.Length.Factor) }, options));
    }

    private static Command Finish(CommonOptions common, Shell shell)
    {
        var anyway = new Option<string>("--anyway") { Description = "Off target or with open steps; the reason goes on record.", HelpName = "REASON", DefaultValueFactory = _ => "" };
        return new Command("finish", "Ends the session with its verdict.") { anyway }.Steps(common, shell, (daemon, options, parsed, by) =>
            daemon.WorkSessionControl.FinishSessionAsync(new FinishSessionRequest { By = by, AnywayBecause = parsed.GetValue(anyway) }, options));
    }

    private static Command Abandon(CommonOptions common, Shell shell)
    {
        var because = new Option<string>("--because") { Description = "Why.", DefaultValueFactory = _ => "" };
        return new Command("abandon", "Ends the session without a verdict. Nothing is deleted.") { because }.Steps(common, shell, (daemon, options, parsed, by) =>
            daemon.WorkSessionControl.AbandonSessionAsync(new AbandonSessionRequest { By = by, Because = parsed.GetValue(because) }, options));
    }
}
