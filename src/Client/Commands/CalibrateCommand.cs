using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Proving;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Commands;

/// <summary><c>scalelink calibrate</c>: proves one pad with known masses, step by step.</summary>
internal static class CalibrateCommand
{
    private const string About = """
        Proves a pad with known masses: says what to put on, waits until it rests, records it, and shows what came of it.
        A proof that runs is taken up where it stands. Lift with two people or a hoist, and never load a pad beyond its capacity.
        """;

    public static Command Create(CommonOptions common, Shell shell)
    {
        var corner = new Argument<string?>("corner") { Description = "The pad: LF, RF, LR, RR. None: the one that is being proved.", Arity = ArgumentArity.ZeroOrOne };
        corner.AcceptOnlyFromAmong("LF", "RF", "LR", "RR");
        var plan = new ProofOptions();
        var who = new Option<string>("--who") { Description = "Name for the ledger and the report.", DefaultValueFactory = _ => Environment.UserName, HelpName = "NAME" };
        var adopt = new Option<bool>("--adopt") { Description = "Without a screen: puts the calibration into force when nothing speaks against it." };
        var reject = new Option<string?>("--reject") { Description = "Without a screen: turns the finished proof down.", HelpName = "REASON" };
        var abandon = new Option<string?>("--abandon") { Description = "Gives up the proof that runs.", HelpName = "REASON" };
        var note = new Option<string>("--note") { Description = "Remark for the ledger and the report.", DefaultValueFactory = _ => "", HelpName = "TEXT" };
        var plain = new Option<bool>("--plain") { Description = "Lines instead of a screen; records each step by itself when its load stands and rests." };
        var command = new Command("calibrate", About) { corner, who, adopt, reject, abandon, note, plain };
        foreach (var option in plan.All)
            command.Options.Add(option);
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = new DaemonConnection(parsed.GetValue(common.Daemon)!, shell.Time);
            var request = plan.Read(parsed);
            var work = new ProofWork(daemon, await CornerOf(parsed.GetValue(corner), daemon, stop), parsed.GetValue(who)!);
            if (parsed.GetValue(abandon) is { } reason)
            {
                await work.Abandon(reason, stop);
                shell.WriteLine($"The proof of {work.Corner.Name()} is given up; the calibration before stays in force.");
                return ExitCodes.Done;
            }

            var view = await Begin(work, request, stop);
            var json = parsed.GetValue(common.Json);
            var decision = new ProofDecision(parsed.GetValue(adopt), parsed.GetValue(reject), parsed.GetValue(note)!);
            return json || parsed.GetValue(plain) || !shell.CanRedraw
                ? await Lines(shell, daemon, work, json).Run(decision, stop)
                : await new ProofScreen(shell, daemon, work, decision.Note).Run(view, stop);
        });
        return command;
    }

    private static ProofLines Lines(Shell shell, DaemonConnection daemon, ProofWork work, bool json) => new(shell, daemon, work, new ProofTelling(shell, json));

    // A plan that comes with a running proof begins none: the daemon says so, and how to go on.
    private static async Task<ProofView> Begin(ProofWork work, StartProofRequest? request, CancellationToken stop)
    {
        if (request is not null)
            return await work.Start(request, stop);
        var view = await work.Now(stop);
        return view.State is ProofState.Measuring or ProofState.Review
            ? view
            : throw new ClientException(new Diagnostic(CalibrationCodes.NoCalibrationRunning, $"{work.Corner.Name()} is not being proved.", "Begin with --masses FILE: a line for each mass, such as \"20 A, 20, M1\"."));
    }

    private static async Task<Corner> CornerOf(string? name, DaemonConnection daemon, CancellationToken stop)
    {
        if (name is not null)
            return WireCorners.Named(name);
        var proofs = await daemon.Ask(o => daemon.Proofs.ListProofsAsync(new ListProofsRequest(), o), stop);
        return proofs.Proofs.Where(p => p.State is ProofState.Measuring or ProofState.Review).ToList() is [var only]
            ? only.Corner
            : throw new ClientException(new Diagnostic(ClientCodes.PadUnclear, "It is not clear which pad is meant.", "Name its corner: LF, RF, LR or RR."));
    }
}
