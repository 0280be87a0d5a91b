using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;

namespace ScaleLink.Client.Calibration;

/// <summary>What a person at the pad can ask of the daemon, under one name.</summary>
internal sealed class ProcedureCalls(DaemonConnection daemon, Corner corner, string who)
{
    public Corner Corner => corner;

    /// <summary>What the request would begin, or why it would not.</summary>
    public Task<PlannedProcedure> Plan(StartProcedureRequest request, CancellationToken stop)
    {
        request.Corner = corner;
        return daemon.Ask(o => daemon.CalibrationProcedures.PlanProcedureAsync(request, o), stop);
    }

    public Task<ProcedureView> Start(StartProcedureRequest request, CancellationToken stop)
    {
        (request.Corner, request.Who) = (corner, who);
        return daemon.Ask(o => daemon.CalibrationProcedureControl.StartProcedureAsync(request, o), stop);
    }

    public Task<ProcedureView> Record(uint step, CancellationToken stop, string because = "") =>
        daemon.Ask(o => daemon.CalibrationProcedureControl.RecordPointAsync(new RecordPointRequest { Corner = corner, StepNumber = step, Who = who, Because = because }, o), stop);

    public Task<ProcedureView> Skip(uint step, CancellationToken stop) =>
        daemon.Ask(o => daemon.CalibrationProcedureControl.SkipPointAsync(new SkipPointRequest { Corner = corner, StepNumber = step, Who = who }, o), stop);

    public Task<ProcedureView> Repeat(uint? repetition, CancellationToken stop)
    {
        var request = new RepeatPointRequest { Corner = corner, Who = who };
        if (repetition is { } number)
            request.Repetition = number;
        return daemon.Ask(o => daemon.CalibrationProcedureControl.RepeatPointAsync(request, o), stop);
    }

    public Task<ProcedureView> Finish(CancellationToken stop) =>
        daemon.Ask(o => daemon.CalibrationProcedureControl.FinishMeasuringAsync(new FinishMeasuringRequest { Corner = corner, Who = who }, o), stop);

    public Task<ProcedureView> Adopt(string note, CancellationToken stop) =>
        daemon.Ask(o => daemon.CalibrationProcedureControl.AdoptCalibrationAsync(new AdoptCalibrationRequest { Corner = corner, Who = who, Note = note }, o), stop);

    public Task<ProcedureView> Reject(string reason, CancellationToken stop) =>
        daemon.Ask(o => daemon.CalibrationProcedureControl.RejectCalibrationAsync(new RejectCalibrationRequest { Corner = corner, Who = who, Reason = reason }, o), stop);

    public Task<ProcedureView> Abandon(string reason, CancellationToken stop) =>
        daemon.Ask(o => daemon.CalibrationProcedureControl.AbandonProcedureAsync(new AbandonProcedureRequest { Corner = corner, Who = who, Reason = reason }, o), stop);

    /// <summary>The calibration procedure as it stands, asked for once.</summary>
    public async Task<ProcedureView> Now(CancellationToken stop)
    {
        await foreach (var view in new ProcedureFeed(daemon, corner).WithCancellation(stop))
            if (view.Message is { } message)
                return message;
            else if (view.Trouble is { } trouble)
                throw new ClientException(trouble);
        throw new OperationCanceledException(stop);
    }
}
