using Grpc.Core;
using ScaleLink.Api.V1;
using ScaleLink.Board.Connection;
using ScaleLink.Board.Device;
using ScaleLink.Board.Operating;

namespace ScaleLink.Board.WorkSessions;

/// <summary>The steps of the session in the bay, as this page asks for them. Each is on record by the time it is answered.</summary>
internal sealed class SessionSteps(WorkSessionControl.WorkSessionControlClient control, BayFeed feed, DeviceSettings settings, Asking asking)
{
    /// <summary>A step is under way, or one was answered.</summary>
    public event Action? Changed;

    /// <summary>Why the last step was refused.</summary>
    public Diagnostic? Trouble => asking.Trouble;

    /// <summary>The session that this page saw end last, for its sheet.</summary>
    public Session? Ended { get; private set; }

    public Task Start(string title, double? target, double? tolerance)
    {
        var request = new StartSessionRequest { By = By(), Title = title };
        if (target is { } percent)
            request.TargetCrossWeightPercent = percent;
        if (tolerance is { } half)
            request.TargetTolerancePercent = half;
        return Step(stop => control.StartSessionAsync(request, cancellationToken: stop));
    }

    public Task Check(string key, bool done, bool skip = false, string value = "", string note = "") => Step(stop =>
        control.SetCheckAsync(new SetCheckRequest { By = By(), Key = key, Done = done, Skip = skip, Value = value, Note = note }, cancellationToken: stop));

    /// <summary>All checks that are open, together: none of them is confirmed by itself.</summary>
    public Task TickRemaining() => Step(stop => control.TickRemainingAsync(new TickRemainingRequest { By = By() }, cancellationToken: stop));

    public Task Weigh(CornerNumbers? heightsMm, string note) => Step(stop =>
        control.WeighAsync(new WeighRequest { By = By(), HeightsMm = heightsMm, Note = note }, cancellationToken: stop));

    public Task Turn(Corner corner, double turns) => Step(stop =>
        control.RecordAdjustmentAsync(new RecordAdjustmentRequest { By = By(), Turns = WireCorners.Only(corner, turns) }, cancellationToken: stop));

    public Task TurnAsPlanned() => Step(stop =>
        control.RecordAdjustmentAsync(new RecordAdjustmentRequest { By = By(), AsPlanned = true }, cancellationToken: stop));

    /// <summary>Takes back what was recorded last at one corner, as long as nothing was weighed after it.</summary>
    public Task Undo(Corner corner) => Step(stop => control.UndoAdjustmentAsync(new UndoAdjustmentRequest { By = By(), Corner = corner }, cancellationToken: stop));

    /// <summary>Something else was turned before a reading than was written down.</summary>
    public Task CorrectTurns(uint weighing, CornerNumbers turns) => Step(stop =>
        control.CorrectTurnsAsync(new CorrectTurnsRequest { By = By(), Weighing = weighing, Turns = turns }, cancellationToken: stop));

    public Task Undo() => Step(stop => control.UndoAdjustmentAsync(new UndoAdjustmentRequest { By = By() }, cancellationToken: stop));

    public Task NameTurns(CornerNumbers turns) => Name(new NameChangeRequest { Turns = turns });

    public Task NameOther(string what) => Name(new NameChangeRequest { Other = what });

    public Task NameNothing() => Name(new NameChangeRequest { Nothing = true });

    public Task Confirm() => Step(stop => control.ConfirmStepAsync(new ConfirmStepRequest { By = By() }, cancellationToken: stop));

    public Task EnterHeights(CornerNumbers heightsMm) => Step(stop =>
        control.EnterHeightsAsync(new EnterHeightsRequest { By = By(), HeightsMm = heightsMm }, cancellationToken: stop));

    /// <summary>Whoever works here has read the cautions of the session.</summary>
    public Task ReadCautions() => Step(stop => control.AcknowledgeCautionsAsync(new AcknowledgeCautionsRequest { By = By() }, cancellationToken: stop));

    public Task Finish(string anywayBecause) => Step(stop =>
        control.FinishSessionAsync(new FinishSessionRequest { By = By(), AnywayBecause = anywayBecause }, cancellationToken: stop));

    public Task Abandon(string because) => Step(stop =>
        control.AbandonSessionAsync(new AbandonSessionRequest { By = By(), Because = because }, cancellationToken: stop));

    /// <summary>A refusal was read.</summary>
    public void Forget()
    {
        asking.Forget();
        Changed?.Invoke();
    }

    private Task Name(NameChangeRequest request)
    {
        request.By = By();
        return Step(stop => control.NameChangeAsync(request, cancellationToken: stop));
    }

    // With what this page has seen of the session: of two people who do the same step at once the second is told.
    private StepBy By()
    {
        var by = new StepBy { Who = settings.Who.Trim() };
        if (feed.View.Session is { } session)
            (by.SessionId, by.SeenEntry) = (session.Id, session.Entry);
        return by;
    }

    private async Task Step(Func<CancellationToken, AsyncUnaryCall<Session>> call)
    {
        var answer = asking.Ask(call);
        Changed?.Invoke();
        if (await answer is { } session)
        {
            if (session.State is SessionState.Finished or SessionState.Abandoned)
                Ended = session;
            feed.Take(session);
        }

        Changed?.Invoke();
    }
}
