using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Calibration;

/// <summary><c>scalelink calibrate</c>: calibrates one pad with known masses, step by step.</summary>
internal static class CalibrateCommand
{
    private const int LongestWords = 600;

    private const string About = """
        Calibrates a pad with known masses: says what to put on, waits until it rests, records it, and shows what came of it.
        A calibration procedure that runs is taken up where it stands. Lift with two people or a hoist, and never load a pad beyond its capacity.
        """;

    public static Command Create(CommonOptions common, Shell shell)
    {
        var corner = new Argument<string?>("corner") { Description = "The pad: LF, RF, LR, RR. None: the one that is being calibrated.", Arity = ArgumentArity.ZeroOrOne };
        corner.AcceptOnlyFromAmong("LF", "RF", "LR", "RR");
        var plan = new ProcedureOptions(shell.Glyphs);
        var who = WhoOption.Create(shell);
        var adopt = new Option<bool>("--adopt") { Description = "Without a screen: puts the calibration into effect when nothing speaks against it." };
        var reject = new Option<string?>("--reject") { Description = "Without a screen: turns the finished calibration procedure down.", HelpName = "REASON" };
        var abandon = new Option<string?>("--abandon") { Description = "Gives up the calibration procedure under way.", HelpName = "REASON" };
        var note = new Option<string>("--note") { Description = "Remark for the ledger and the report.", DefaultValueFactory = _ => "", HelpName = "TEXT" };
        var plain = new Option<bool>("--plain") { Description = "Lines instead of a screen; records each step by itself when its load stands and rests." };
        var planOnly = new Option<bool>("--plan") { Description = "Says how much would be lifted and which uncertainty would come out, and begins nothing." };
        var command = new Command("calibrate", About) { corner, planOnly, who, adopt, reject, abandon, note, plain };
        foreach (var option in plan.All)
            command.Options.Add(option);
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.ConnectSilently(parsed, shell);
            var request = plan.Read(parsed);
            var work = new ProcedureCalls(daemon, await CornerOf(parsed.GetValue(corner), daemon, stop), parsed.GetValue(who)!);
            if (parsed.GetValue(abandon) is { } reason)
            {
                await work.Abandon(reason, stop);
                shell.WriteLine($"The calibration procedure of {work.Corner.Name()} is given up; the calibration before stays in effect.");
                return ExitCodes.Done;
            }

            if (parsed.GetValue(planOnly))
                return await Plan(work, request ?? throw NoMasses(work, "Nothing is planned without masses."), shell, parsed.GetValue(common.Json), stop);
            var view = await Begin(work, request, stop);
            var json = parsed.GetValue(common.Json);
            var decision = new ProcedureDecision(parsed.GetValue(adopt), parsed.GetValue(reject), parsed.GetValue(note)!);
            return json || parsed.GetValue(plain) || !shell.CanRedraw
                ? await Lines(shell, daemon, work, json).Run(decision, stop)
                : await new ProcedureScreen(shell, daemon, work, decision.Note).Run(view, stop);
        });
        return command;
    }

    private static ProcedureLines Lines(Shell shell, DaemonConnection daemon, ProcedureCalls work, bool json) => new(shell, daemon, work, new ProcedureTelling(shell, json));

    // A plan that comes with a running calibration procedure begins none: the daemon says so, and how to go on.
    private static async Task<ProcedureView> Begin(ProcedureCalls work, StartProcedureRequest? request, CancellationToken stop)
    {
        if (request is not null)
            return await work.Start(request, stop);
        var view = await work.Now(stop);
        return view.State is ProcedureState.Measuring or ProcedureState.Review
            ? view
            : throw NoMasses(work, $"{work.Corner.Name()} is not being calibrated.");
    }

    private static ClientException NoMasses(ProcedureCalls work, string what) =>
        new(new Diagnostic(CalibrationCodes.NoCalibrationRunning, what, $"Begin with: scalelink calibrate {work.Corner.Name()} --masses FILE, a line for each mass, such as \"20 A, 20, M1\"."));

    private static async Task<int> Plan(ProcedureCalls work, StartProcedureRequest request, Shell shell, bool json, CancellationToken stop)
    {
        var planned = await work.Plan(request, stop);
        shell.Write(planned, json, p => p.Refusals.Count > 0 ? p.Refusals.Select(r => shell.Glyphs.Tell(DiagnosticReader.Read(r))) : [shell.Glyphs.Tell(p.WordsSaid, LongestWords)]);
        return planned.Refusals.Count > 0 ? ExitCodes.NotAchieved : ExitCodes.Done;
    }

    private static async Task<Corner> CornerOf(string? name, DaemonConnection daemon, CancellationToken stop)
    {
        if (name is not null)
            return WireCorners.Named(name);
        var procedures = await daemon.Ask(o => daemon.CalibrationProcedures.ListProceduresAsync(new ListProceduresRequest(), o), stop);
        return procedures.CalibrationProcedures.Where(p => p.State is ProcedureState.Measuring or ProcedureState.Review).ToList() is [var only]
            ? only.Corner
            : throw new ClientException(new Diagnostic(ClientCodes.PadUnclear, "It is not clear which pad is meant.", "Name its corner: LF, RF, LR or RR."));
    }
}
