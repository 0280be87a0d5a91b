using System.Collections.Concurrent;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Pipeline;
using ScaleLink.Measure;
using ScaleLink.Weighing.Calibration;

namespace ScaleLink.Daemon.Proving;

/// <summary>
/// Where pads are proved: one proof at a time for each corner. Every step that it acknowledges is in the ledger first, so that a
/// proof goes on after a restart. Refusals are thrown as <see cref="StepRefusedException"/> and change nothing.
/// </summary>
public sealed class ProofDesk
{
    private readonly LiveBay _bay;
    private readonly CalibrationLedger _calibrations;
    private readonly BayClock _clock;
    private readonly Workflow<ProofBook> _flow;
    private readonly ConcurrentDictionary<Corner, Diagnostic> _refused = [];

    /// <summary>Takes up the proofs that the ledger holds unfinished.</summary>
    public ProofDesk(LiveBay bay, ProofLedger proofs, CalibrationLedger calibrations, BayClock clock)
    {
        ArgumentNullException.ThrowIfNull(proofs);
        (_bay, _calibrations, _clock, _flow) = (bay, calibrations, clock, proofs.TakeUp());
        _flow.Show(book => book.OnTheBenches);
    }

    /// <summary>Told when a proof has moved on; called outside the lock.</summary>
    public event Action? Changed;

    /// <summary>The newest proof at a corner of this run, or one that goes on from before; and the refusal of the last try.</summary>
    public (ProofRecord? Proof, Diagnostic? Refused) At(Corner corner) => (_flow.State.At(corner), _refused.GetValueOrDefault(corner));

    /// <summary>Begins a proof.</summary>
    public void Start(ProofPlan plan, string who)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Do(plan.Corner, () => _flow.Take(plan.Before.Pad, book =>
        {
            if (book.All.Values.FirstOrDefault(p => p.IsOpen && (p.Corner == plan.Corner || p.SerialNumber == plan.Before.Pad)) is { } open)
                throw new StepRefusedException(CalibrationCodes.CalibrationRunning.Because($"{open.Corner}, {open.SerialNumber}, since {open.BegunAt:yyyy-MM-dd HH:mm} UTC"));
            ProofFlow.Begin(plan);
            return ProofLedger.Steps.Entry(Now, who, new ProofEvent { Begun = plan });
        }));
    }

    /// <summary>Takes the reading of this moment for the present step.</summary>
    public void Record(Corner corner, int step, string who) => Step(corner, step, who, flow =>
    {
        var answer = BenchReading.Of(_bay, Open(_flow.State, corner)).Offer(_bay, flow);
        return (answer, happened => happened with { Taken = answer.Flow.Readings[^1] });
    });

    /// <summary>Leaves the present step out.</summary>
    public void Skip(Corner corner, int step, string who) =>
        Step(corner, step, who, flow => (flow.Skip(), happened => happened with { Skipped = flow.Next!.Step }));

    /// <summary>Takes the last point back, or throws a run away.</summary>
    public void Repeat(Corner corner, int? run, string who) => Move(corner, who, flow => run is { } number
        ? (flow.RetakeRun(number), happened => happened with { RunAgain = number })
        : (flow.StepBack(), happened => happened with { SteppedBack = true }));

    /// <summary>Ends the measuring.</summary>
    public void Finish(Corner corner, string who) => Move(corner, who, flow => (flow.Finish(), happened => happened with { Finished = true }));

    /// <summary>Gives the proof up, or, once it is finished, turns its calibration down.</summary>
    public void End(Corner corner, bool finished, string who, string reason) => Move(corner, who, flow =>
        finished == (flow.Stage == ProofStage.Review)
            ? (flow.Abandon(who, Now, reason), happened => happened with { Ended = reason })
            : throw new StepRefusedException(CalibrationCodes.OutOfStep.Because(finished ? "readings are still missing" : "the measuring has ended: adopt or reject it")));

    /// <summary>Puts the calibration of a finished proof into force.</summary>
    public void Adopt(Corner corner, string who, string note) => Do(corner, () => _flow.Alone(() =>
    {
        var after = _flow.Take(book => Open(book, corner).SerialNumber, book =>
        {
            var proof = Open(book, corner);
            var answer = proof.Flow.Accept(who, Now);
            return answer.Accepted
                ? ProofLedger.Adoptions.Entry(Now, who, CalibrationLedger.Written.Of(answer.Flow.Report().Calibration!, proof.Id, note, again: false))
                : throw new StepRefusedException(answer.Refusals[0]);
        });
        PutIntoForce(after.At(corner)!.SerialNumber);
    }));

    /// <summary>Puts an older calibration into force again.</summary>
    public void Readopt(AdoptedCalibration older, string who, string note)
    {
        ArgumentNullException.ThrowIfNull(older);
        _flow.Alone(() =>
        {
            _flow.Take(older.Calibration.Pad, _ => _calibrations.InForce(older.Calibration.Pad)?.Identity == older.Calibration.Identity
                ? throw new StepRefusedException(CalibrationCodes.CalibrationInForce.Because(older.Calibration.ShortIdentity))
                : ProofLedger.Adoptions.Entry(Now, who, CalibrationLedger.Written.Of(older.Calibration, older.Proof, note, again: true)));
            PutIntoForce(older.Calibration.Pad);
        });
        Changed?.Invoke();
    }

    private DateTimeOffset Now => _clock.ToUtc(_clock.NowNs);

    private void Step(Corner corner, int step, string who, Func<ProofFlow, (FlowAnswer, Func<ProofEvent, ProofEvent>)> move) => Move(corner, who, flow =>
        flow.Next is { } next && next.Number != step
            ? throw new StepRefusedException(CalibrationCodes.OutOfStep.Because($"step {next.Number} is due, not {step}"))
            : move(flow));

    private void Move(Corner corner, string who, Func<ProofFlow, (FlowAnswer Answer, Func<ProofEvent, ProofEvent> Happened)> move) =>
        Do(corner, () => _flow.Take(book => Open(book, corner).SerialNumber, book =>
        {
            var proof = Open(book, corner);
            var (answer, happened) = move(proof.Flow);
            return answer.Accepted ? ProofLedger.Steps.Entry(Now, who, happened(new ProofEvent { Proof = proof.Id })) : throw new StepRefusedException(answer.Refusals[0]);
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

    private static ProofRecord Open(ProofBook book, Corner corner) =>
        book.At(corner) is { IsOpen: true } open ? open : throw new StepRefusedException(CalibrationCodes.NoCalibrationRunning.Because(corner.ToString()));

    private void PutIntoForce(string serialNumber)
    {
        foreach (var pad in _bay.Pads.Where(p => p.Standing.Identity?.SerialNumber == serialNumber))
            pad.Recognise();
    }
}
