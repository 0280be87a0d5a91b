using ScaleLink.Api.V1;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Connection;
using ScaleLink.Measure;

namespace ScaleLink.Client.WorkSessions.Guided;

/// <summary>The steps that keys of the guided session take, as calls. Each is on record when it is answered.</summary>
internal sealed class GuidedSteps(DaemonConnection daemon, string who, Units units)
{
    /// <summary>Takes the step of an offer.</summary>
    /// <param name="offer">What was chosen.</param>
    /// <param name="session">The session that it was chosen in; absent when none was open.</param>
    /// <param name="text">What was typed for it.</param>
    /// <param name="stop">Gives up.</param>
    /// <exception cref="ClientException">The daemon refuses, or what was typed cannot be read.</exception>
    public Task<Session> Take(Offer offer, Session? session, string text, CancellationToken stop)
    {
        var by = By(session);
        var control = daemon.WorkSessionControl;
        return offer.Act switch
        {
            Act.Start => daemon.Ask(o => control.StartSessionAsync(new StartSessionRequest { By = by }, o), stop),
            Act.Tick => daemon.Ask(o => control.SetCheckAsync(new SetCheckRequest { By = by, Key = Check(session).Key, Done = true, Value = AskedUnits.With(text, Check(session).Asks, units) }, o), stop),
            Act.LeaveOut => daemon.Ask(o => control.SetCheckAsync(new SetCheckRequest { By = by, Key = Check(session).Key, Skip = true, Note = text }, o), stop),
            Act.TickRest => daemon.Ask(o => control.TickRemainingAsync(new TickRemainingRequest { By = by }, o), stop),
            Act.Weigh => daemon.Ask(o => control.WeighAsync(new WeighRequest { By = by }, o), stop),
            Act.AsPlanned => daemon.Ask(o => control.RecordAdjustmentAsync(new RecordAdjustmentRequest { By = by, AsPlanned = true }, o), stop),
            Act.One => Turn(by, WireCorners.Only(WireCorners.All[offer.Index], session!.Perches.First(p => p.Corner == WireCorners.All[offer.Index]).Left), stop),
            Act.Turned => Turn(by, Turns(text), stop),
            Act.Undo => daemon.Ask(o => control.UndoAdjustmentAsync(new UndoAdjustmentRequest { By = by }, o), stop),
            Act.PutRight => daemon.Ask(o => control.CorrectTurnsAsync(new CorrectTurnsRequest { By = by, Weighing = session!.Weighings[^1].Number, Turns = session.Weighings[^1].Causes[offer.Index].Turns }, o), stop),
            Act.Confirm => daemon.Ask(o => control.ConfirmStepAsync(new ConfirmStepRequest { By = by }, o), stop),
            Act.NameNothing => daemon.Ask(o => control.NameChangeAsync(new NameChangeRequest { By = by, Nothing = true }, o), stop),
            Act.NameOther => daemon.Ask(o => control.NameChangeAsync(new NameChangeRequest { By = by, Other = text }, o), stop),
            Act.NameTurns => daemon.Ask(o => control.NameChangeAsync(new NameChangeRequest { By = by, Turns = Turns(text) }, o), stop),
            Act.ReadCautions => daemon.Ask(o => control.AcknowledgeCautionsAsync(new AcknowledgeCautionsRequest { By = by }, o), stop),
            Act.Finish => daemon.Ask(o => control.FinishSessionAsync(new FinishSessionRequest { By = by, AnywayBecause = text }, o), stop),
            Act.Abandon => daemon.Ask(o => control.AbandonSessionAsync(new AbandonSessionRequest { By = by, Because = text }, o), stop),
            _ => throw new ArgumentOutOfRangeException(nameof(offer), offer.Act, null),
        };
    }

    private static Check Check(Session? session) => Offers.Next(session!.State == SessionState.Preparing ? session.Preparation : session.LastSteps)!;

    private static CornerNumbers Turns(string text) => CornerArguments.ReadPairs(text.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries)) is { } turns && !turns.IsZero() ? turns
        : throw new ClientException(new Diagnostic(ClientCodes.TurnsNotUnderstood, "These are no turns.", "Write corners and turns in pairs, up positive: RF 0.5 LR -0.25."));

    private Task<Session> Turn(StepBy by, CornerNumbers turns, CancellationToken stop) =>
        daemon.Ask(o => daemon.WorkSessionControl.RecordAdjustmentAsync(new RecordAdjustmentRequest { By = by, Turns = turns }, o), stop);

    // With what this screen has seen: of two people who take the same step at once the second is told.
    private StepBy By(Session? session)
    {
        var by = new StepBy { Who = who };
        if (session is { Ending.Length: 0 })
            (by.SessionId, by.SeenEntry) = (session.Id, session.Entry);
        return by;
    }
}
