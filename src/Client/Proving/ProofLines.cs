using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Proving;

/// <summary>
/// A proof without a screen: says each step on a line and records it by itself once the load stands and rests. Where no reading
/// can tell that the step is done, it waits for a line on standard input. Goes on across every loss of the daemon.
/// </summary>
internal sealed class ProofLines(Shell shell, DaemonConnection daemon, ProofWork work, ProofTelling telling)
{
    private readonly ScriptOrders _orders = new(shell.In);
    private (string Proof, uint Step, int Points)? _sent;
    private (string Proof, uint Step, int Points)? _told;

    /// <summary>Runs to the decision; gives the exit code.</summary>
    public async Task<int> Run(ProofDecision decision, CancellationToken stop)
    {
        ProofView? last = null;
        try
        {
            await foreach (var view in new ProofFeed(daemon, work.Corner).WithCancellation(stop))
            {
                telling.Tell(view);
                if (view is not { Freshness: Freshness.Live, Message: { } proof })
                    continue;
                last = proof;
                if (proof.State == ProofState.Measuring)
                    await Measure(proof, stop);
                else if (proof.State == ProofState.Review)
                    return await Decide(proof, decision, stop);
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

    private async Task Measure(ProofView proof, CancellationToken stop)
    {
        if (proof.Step is not { } step)
            return;
        var here = (proof.ProofId, step.Number, proof.Points.Count);
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
        if (!proof.Ready || step.Untold && _told != here || _sent == here)
            return;
        _sent = here;
        await Try(() => work.Record(step.Number, stop), isOrder: false);
    }

    private Task<ProofView> Obey(string order, uint step, CancellationToken stop) => order.Split(' ') switch
    {
        ["back"] => work.Repeat(null, stop),
        ["skip"] => work.Skip(step, stop),
        ["finish"] => work.Finish(stop),
        ["again", var run] when uint.TryParse(run, out var number) => work.Repeat(number, stop),
        _ => throw new ClientException(new Diagnostic(ClientCodes.OrderUnknown, $"\"{PeerText.Clean(order, 40)}\" is no order.", "Orders: record, back, skip, again N, finish.")),
    };

    private async Task Try(Func<Task<ProofView>> ask, bool isOrder)
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

    private async Task<int> Decide(ProofView proof, ProofDecision decision, CancellationToken stop)
    {
        telling.Result(proof);
        if (decision.Reject is { } reason)
        {
            telling.Ended(await work.Reject(reason, stop));
            return ExitCodes.Done;
        }

        if (proof.Result.Refusals.Count > 0)
            return ExitCodes.NotAchieved;
        if (decision.Adopt)
            telling.Ended(await work.Adopt(decision.Note, stop));
        else
            telling.Undecided(proof);
        return ExitCodes.Done;
    }
}
