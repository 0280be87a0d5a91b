using Grpc.Core;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Service;

/// <summary>The steps of a work session over gRPC. Each is in the ledger before it is answered.</summary>
internal sealed class WorkSessionControlService(SessionDesk desk, SessionStarter starter, ReadingTaker taker) : Wire.WorkSessionControl.WorkSessionControlBase
{
    private const int LongestNote = 400;
    private const int LongestValue = 80;

    public override Task<Wire.Session> StartSession(Wire.StartSessionRequest request, ServerCallContext context) => Answer(desk.Begin(
        starter.Start(Text(request.Title, LongestValue), request.HasTargetCrossWeightPercent ? request.TargetCrossWeightPercent : null,
            request.HasTargetTolerancePercent ? request.TargetTolerancePercent : null, [.. request.LeaveOut], [.. request.SettlingActions.Select(a => Text(a, LongestValue))]),
        ApiErrors.Who(request.By?.Who ?? "")));

    public override Task<Wire.Session> SetCheck(Wire.SetCheckRequest request, ServerCallContext context) => Step(request.By, view =>
        SessionRules.Check(view, Text(request.Key, LongestValue), request.Done, request.Skip, Text(request.Value, LongestValue), Text(request.Note, LongestNote)));

    public override Task<Wire.Session> TickRemaining(Wire.TickRemainingRequest request, ServerCallContext context) => Step(request.By, SessionRules.TickRemaining);

    public override Task<Wire.Session> Weigh(Wire.WeighRequest request, ServerCallContext context) => Step(request.By, view =>
    {
        SessionRules.MayWeigh(view);
        return SessionRules.Weigh(view, taker.Take(), Heights(request.HeightsMm), Text(request.Note, LongestNote));
    });

    public override Task<Wire.Session> RecordAdjustment(Wire.RecordAdjustmentRequest request, ServerCallContext context) => Step(request.By, view =>
        SessionRules.Adjust(view, request.Turns?.ToCorners(), request.AsPlanned, Text(request.Note, LongestNote)));

    public override Task<Wire.Session> UndoAdjustment(Wire.UndoAdjustmentRequest request, ServerCallContext context) => Step(request.By, view =>
        SessionRules.Undo(view, request.Corner == Wire.Corner.Unspecified ? null : request.Corner.ToCorner()));

    public override Task<Wire.Session> CorrectTurns(Wire.CorrectTurnsRequest request, ServerCallContext context) => Step(request.By, view =>
        SessionRules.Correct(view, (int)Math.Min(request.Weighing, int.MaxValue), request.Turns?.ToCorners()
            ?? throw new StepRefusedException(SessionCodes.InputUnusable, "No turns are given.", "Give what was really turned, all four corners; 0 where nothing was.")));

    public override Task<Wire.Session> NameChange(Wire.NameChangeRequest request, ServerCallContext context) => Step(request.By, view => request.WhatCase switch
    {
        Wire.NameChangeRequest.WhatOneofCase.Turns => SessionRules.Name(view, request.Turns.ToCorners(), null),
        Wire.NameChangeRequest.WhatOneofCase.Other when Text(request.Other, LongestNote) is { Length: > 0 } other => SessionRules.Name(view, null, other),
        Wire.NameChangeRequest.WhatOneofCase.Nothing => SessionRules.Name(view, null, null),
        _ => throw new StepRefusedException(SessionCodes.InputUnusable, "The change has no name.", "Give the turns that were made, or say what else changed, or that nothing did."),
    });

    public override Task<Wire.Session> ConfirmStep(Wire.ConfirmStepRequest request, ServerCallContext context) => Step(request.By, SessionRules.Confirm);

    public override Task<Wire.Session> EnterHeights(Wire.EnterHeightsRequest request, ServerCallContext context) => Step(request.By, view =>
        SessionRules.EnterHeights(view, request.HeightsMm.ToCorners()));

    public override Task<Wire.Session> AcknowledgeCautions(Wire.AcknowledgeCautionsRequest request, ServerCallContext context) => Step(request.By, view =>
        SessionRules.ReadCautions(view, ApiErrors.Who(request.By?.Who ?? "")));

    public override Task<Wire.Session> FinishSession(Wire.FinishSessionRequest request, ServerCallContext context) => Step(request.By, view =>
        SessionRules.Finish(view, Text(request.AnywayBecause, LongestNote)));

    public override Task<Wire.Session> AbandonSession(Wire.AbandonSessionRequest request, ServerCallContext context) => Step(request.By, view =>
        SessionRules.Abandon(view, Text(request.Because, LongestNote)));

    private Task<Wire.Session> Step(Wire.StepBy? by, Func<SessionView, SessionStep> make) => Answer(desk.Take(
        by?.SessionId ?? "", by is { HasSeenEntry: true } ? (long)by.SeenEntry : null, ApiErrors.Who(by?.Who ?? ""), make));

    private static Task<Wire.Session> Answer(SessionView view) => Task.FromResult(SessionMapping.Session(view));

    private static Corners? Heights(Wire.CornerNumbers? heights) => heights?.ToCorners();

    private static string Text(string text, int most) => PlainText.Clean(text, most);
}
