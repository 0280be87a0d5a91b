using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Calibration;

/// <summary>
/// A calibration procedure without a screen: says each step on a line and records it by itself once the load stands and rests. Where no reading
/// can tell that the step is done, it waits for a line on standard input. Goes on across every loss of the daemon.
/// </summary>
internal sealed class ProcedureLines(Shell shell, DaemonConnection daemon, ProcedureCalls work, ProcedureTelling telling, ScriptOrders? orders = null)
{
    private readonly ScriptOrders _orders = orders ?? new(shell.In);
    private (string Procedure, uint Step, int Points)? _sent;
    private (string Procedure, uint Step, int Points)? _told;

    /// <summary>Runs to the decision; gives the exit code.</summary>
    public async Task<int> Run(ProcedureDecision decision, CancellationToken stop)
    {
        ProcedureView? last = null;
        try
        {
            await foreach (var view in new ProcedureFeed(daemon, work.Corner).WithCancellation(stop))
            {
                telling.Tell(view);
                if (view is not { Freshness: Freshness.Live, Message: { } procedure })
                    continue;
                last = procedure;
                if (procedure.State == ProcedureState.Measuring)
                    await Measure(procedure, stop);
                else if (procedure.State == ProcedureState.Review)
                    return await Decide(procedure, decision, stop);
                else
                    return ExitCodes.NotAchieved;
            }
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            telling.Left(last, work.Corner);
        }

        return ExitCodes.Done;
    }

    private async Task Measure(ProcedureView procedure, CancellationToken stop)
    {
        if (procedure.Step is not { } step)
            return;
        var here = (procedure.ProcedureId, step.Number, procedure.Points.Count);
        if (_orders.TryTake(out var order))
        {
            _sent = null;
            // Said once, it holds until the load rests.
            if (order is "" or "record")
                _told = here;
            else
                await Try(() => Obey(order, step.Number, stop), isOrder: true);
            return;
        }

        // Messages on the way may still show the step that was recorded just now.
        if (!procedure.Ready || step.Untold && _told != here || _sent == here)
            return;
        _sent = here;
        await Try(() => work.Record(step.Number, stop), isOrder: false);
    }

    private Task<ProcedureView> Obey(string order, uint step, CancellationToken stop) => order.Split(' ') switch
    {
        ["back"] => work.Repeat(null, stop),
        ["skip"] => work.Skip(step, stop),
        ["finish"] => work.Finish(stop),
        ["empty", .. { Length: > 0 } because] => work.Record(step, stop, string.Join(' ', because)),
        ["again", var repetition] when uint.TryParse(repetition, out var number) => work.Repeat(number, stop),
        _ => throw new ClientException(new Diagnostic(ClientCodes.OrderUnknown, $"\"{PeerText.Clean(order, 40)}\" is no order.", "Orders: record, back, skip, again N, finish, empty REASON.")),
    };

    private async Task Try(Func<Task<ProcedureView>> ask, bool isOrder)
    {
        try
        {
            await ask();
        }
        catch (ClientException e)
        {
            // Refused, or the daemon is away: the feed says how things stand, and the step is tried again.
            _sent = null;
            telling.Refused(e.Diagnostic, isOrder);
        }
    }

    private async Task<int> Decide(ProcedureView procedure, ProcedureDecision decision, CancellationToken stop)
    {
        telling.Result(procedure);
        if (decision.Reject is { } reason)
        {
            telling.Ended(await work.Reject(reason, stop));
            return ExitCodes.Done;
        }

        if (procedure.Result.Refusals.Count > 0)
            return ExitCodes.NotAchieved;
        if (decision.Adopt)
            telling.Ended(await work.Adopt(decision.Note, stop));
        else
            telling.Undecided(procedure);
        return ExitCodes.Done;
    }
}
