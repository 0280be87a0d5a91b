using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;

namespace ScaleLink.Client.Proving;

/// <summary>What a person at the pad can ask of the daemon, under one name.</summary>
internal sealed class ProofWork(DaemonConnection daemon, Corner corner, string who)
{
    public Corner Corner => corner;

    public Task<ProofView> Start(StartProofRequest request, CancellationToken stop)
    {
        (request.Corner, request.Who) = (corner, who);
        return daemon.Ask(o => daemon.ProofControl.StartProofAsync(request, o), stop);
    }

    public Task<ProofView> Record(uint step, CancellationToken stop) =>
        daemon.Ask(o => daemon.ProofControl.RecordPointAsync(new RecordPointRequest { Corner = corner, StepNumber = step, Who = who }, o), stop);

    public Task<ProofView> Skip(uint step, CancellationToken stop) =>
        daemon.Ask(o => daemon.ProofControl.SkipPointAsync(new SkipPointRequest { Corner = corner, StepNumber = step, Who = who }, o), stop);

    public Task<ProofView> Repeat(uint? run, CancellationToken stop)
    {
        var request = new RepeatPointRequest { Corner = corner, Who = who };
        if (run is { } number)
            request.Run = number;
        return daemon.Ask(o => daemon.ProofControl.RepeatPointAsync(request, o), stop);
    }

    public Task<ProofView> Finish(CancellationToken stop) =>
        daemon.Ask(o => daemon.ProofControl.FinishMeasuringAsync(new FinishMeasuringRequest { Corner = corner, Who = who }, o), stop);

    public Task<ProofView> Adopt(string note, CancellationToken stop) =>
        daemon.Ask(o => daemon.ProofControl.AdoptProofAsync(new AdoptProofRequest { Corner = corner, Who = who, Note = note }, o), stop);

    public Task<ProofView> Reject(string reason, CancellationToken stop) =>
        daemon.Ask(o => daemon.ProofControl.RejectProofAsync(new RejectProofRequest { Corner = corner, Who = who, Reason = reason }, o), stop);

    public Task<ProofView> Abandon(string reason, CancellationToken stop) =>
        daemon.Ask(o => daemon.ProofControl.AbandonProofAsync(new AbandonProofRequest { Corner = corner, Who = who, Reason = reason }, o), stop);

    /// <summary>The proof as it stands, asked for once.</summary>
    public async Task<ProofView> Now(CancellationToken stop)
    {
        await foreach (var view in new ProofFeed(daemon, corner).WithCancellation(stop))
            if (view.Message is { } message)
                return message;
            else if (view.Trouble is { } trouble)
                throw new ClientException(trouble);
        throw new OperationCanceledException(stop);
    }
}
