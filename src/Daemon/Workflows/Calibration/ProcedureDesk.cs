using System.Collections.Concurrent;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Measure;
using ScaleLink.Weighing.Calibration.Flow;

namespace ScaleLink.Daemon.Workflows.Calibration;

/// <summary>
/// Where pads are calibrated: one calibration procedure at a time for each corner. Every step that it acknowledges is in the ledger first, so that a
/// calibration procedure goes on after a restart. Refusals are thrown as <see cref="StepRefusedException"/> and change nothing.
/// </summary>
internal sealed class ProcedureDesk
{
    private readonly LiveBay _bay;
    private readonly CalibrationLedger _calibrations;
    private readonly BayClock _clock;
    private readonly Workflow<ProcedureBook> _flow;
    private readonly ConcurrentDictionary<Corner, Diagnostic> _refused = [];

    /// <summary>Takes up the calibration procedures that the ledger holds unfinished.</summary>
    public ProcedureDesk(LiveBay bay, ProcedureLedger procedures, CalibrationLedger calibrations, BayClock clock)
    {
        ArgumentNullException.ThrowIfNull(procedures);
        (_bay, _calibrations, _clock, _flow) = (bay, calibrations, clock, procedures.TakeUp());
        _flow.Show(book => book.OnTheBenches);
    }

    /// <summary>Told when a calibration procedure has moved on; called outside the lock.</summary>
    public event Action? Changed;

    /// <summary>The newest calibration procedure at a corner of this run, or one that goes on from before; and the refusal of the last try.</summary>
    public (ProcedureRecord? Procedure, Diagnostic? Refused) At(Corner corner) => (_flow.State.At(corner), _refused.GetValueOrDefault(corner));

    /// <summary>Begins a calibration procedure.</summary>
    public void Start(ProcedurePlan plan, string who)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Do(plan.Corner, () => _flow.Take(plan.Before.Pad, book =>
        {
            if (book.All.Values.FirstOrDefault(p => p.IsOpen && (p.Corner == plan.Corner || p.SerialNumber == plan.Before.Pad)) is { } open)
                throw new StepRefusedException(CalibrationCodes.CalibrationRunning.Because($"{open.Corner}, {open.SerialNumber}, since {LocalTime.Minute(open.BegunAt)}"));
            ProcedureFlow.Begin(plan);
            return ProcedureLedger.Steps.Entry(Now, who, new ProcedureEvent { Begun = plan with { Who = who } });
        }));
    }

    /// <summary>Takes the reading of this moment for the present step.</summary>
    /// <param name="corner">Of the pad.</param>
    /// <param name="step">Number of the step that the caller sees.</param>
    /// <param name="who">Who takes it.</param>
    /// <param name="because">Why a pad that does not look empty is; empty to refuse it.</param>
    public void Record(Corner corner, int step, string who, string because = "") => Step(corner, step, who, flow =>
    {
        var answer = BenchReading.Of(_bay, Open(_flow.State, corner)).Offer(_bay, flow, because);
        return (answer, happened => happened with { Taken = answer.Flow.Readings[^1] });
    });

    /// <summary>Leaves the present step out.</summary>
    public void Skip(Corner corner, int step, string who) =>
        Step(corner, step, who, flow => (flow.Skip(), happened => happened with { Skipped = flow.Next!.Step }));

    /// <summary>Takes the last point back, or throws a repetition away.</summary>
    public void Repeat(Corner corner, int? repetition, string who) => Move(corner, who, flow => repetition is { } number
        ? (flow.RetakeRepetition(number), happened => happened with { RepetitionAgain = number })
        : (flow.StepBack(), happened => happened with { SteppedBack = true }));

    /// <summary>Ends the measuring.</summary>
    public void Finish(Corner corner, string who) => Move(corner, who, flow => (flow.Finish(), happened => happened with { Finished = true }));

    /// <summary>Gives the calibration procedure up, or, once it is finished, turns its calibration down.</summary>
    public void End(Corner corner, bool finished, string who, string reason) => Move(corner, who, flow =>
        finished == (flow.Stage == ProcedureStage.Review)
            ? (flow.Abandon(who, Now, reason), happened => happened with { Ended = reason })
            : throw new StepRefusedException(CalibrationCodes.OutOfStep.Because(finished ? "readings are still missing" : "the measuring has ended: adopt or reject it")));

    /// <summary>Puts the calibration of a finished calibration procedure into effect.</summary>
    public void Adopt(Corner corner, string who, string note) => Do(corner, () => _flow.Alone(() =>
    {
        var after = _flow.Take(book => Open(book, corner).SerialNumber, book =>
        {
            var procedure = Open(book, corner);
            var answer = procedure.Flow.Accept(who, Now);
            return answer.Accepted
                ? ProcedureLedger.Adoptions.Entry(Now, who, CalibrationLedger.Written.Of(answer.Flow.Report().Calibration!, procedure.Id, note, again: false))
                : throw new StepRefusedException(answer.Refusals[0]);
        });
        PutIntoEffect(after.At(corner)!.SerialNumber);
    }));

    /// <summary>Puts an older calibration into effect again.</summary>
    public void Readopt(AdoptedCalibration older, string who, string note)
    {
        ArgumentNullException.ThrowIfNull(older);
        _flow.Alone(() =>
        {
            _flow.Take(older.Calibration.Pad, _ => _calibrations.InEffect(older.Calibration.Pad)?.Identity == older.Calibration.Identity
                ? throw new StepRefusedException(CalibrationCodes.CalibrationInEffect.Because(older.Calibration.ShortIdentity))
                : ProcedureLedger.Adoptions.Entry(Now, who, CalibrationLedger.Written.Of(older.Calibration, older.Procedure, note, again: true)));
            PutIntoEffect(older.Calibration.Pad);
        });
        Changed?.Invoke();
    }

    private DateTimeOffset Now => _clock.ToUtc(_clock.NowNs);

    private void Step(Corner corner, int step, string who, Func<ProcedureFlow, (FlowAnswer, Func<ProcedureEvent, ProcedureEvent>)> move) => Move(corner, who, flow =>
        flow.Next is { } next && next.Number != step
            ? throw new StepRefusedException(CalibrationCodes.OutOfStep.Because($"step {next.Number} is due, not {step}"))
            : move(flow));

    private void Move(Corner corner, string who, Func<ProcedureFlow, (FlowAnswer Answer, Func<ProcedureEvent, ProcedureEvent> Happened)> move) =>
        Do(corner, () => _flow.Take(book => Open(book, corner).SerialNumber, book =>
        {
            var procedure = Open(book, corner);
            var (answer, happened) = move(procedure.Flow);
            return answer.Accepted ? ProcedureLedger.Steps.Entry(Now, who, happened(new ProcedureEvent { Procedure = procedure.Id })) : throw new StepRefusedException(answer.Refusals[0]);
        }));

    private void Do(Corner corner, Action act)
    {
        try
        {
            act();
            _refused.TryRemove(corner, out _);
        }
        catch (StepRefusedException refused)
        {
            _refused[corner] = refused.Diagnostic;
            throw;
        }
        finally
        {
            Changed?.Invoke();
        }
    }

    private static ProcedureRecord Open(ProcedureBook book, Corner corner) =>
        book.At(corner) is { IsOpen: true } open ? open : throw new StepRefusedException(CalibrationCodes.NoCalibrationRunning.Because(corner.ToString()));

    private void PutIntoEffect(string serialNumber)
    {
        foreach (var pad in _bay.Pads.Where(p => p.Standing.Identity?.SerialNumber == serialNumber))
            pad.Recognise();
    }
}
