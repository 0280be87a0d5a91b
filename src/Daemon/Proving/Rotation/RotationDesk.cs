using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Pipeline;
using ScaleLink.Weighing.Calibration;

namespace ScaleLink.Daemon.Proving;

/// <summary>
/// Where the pads are moved round under one car: one rotation at a time. Every step that it acknowledges is in the ledger first, so
/// that it goes on after a restart, which moving pads may need. Refusals are thrown as <see cref="StepRefusedException"/> and change nothing.
/// </summary>
internal sealed class RotationDesk(PlacementTaker taker, RotationLedger ledger, BayClock clock)
{
    private readonly Workflow<RotationBook> _flow = ledger.TakeUp();

    /// <summary>The rotation that goes on, or the last one; absent before the first.</summary>
    public RotationRecord? Newest => _flow.State.Newest;

    /// <summary>Serial number of the pad at each corner, in the order LF, RF, LR, RR.</summary>
    public IReadOnlyList<string> Present => taker.Present;

    /// <summary>Why <see cref="Record"/> would be refused now; absent when it would not.</summary>
    public Diagnostic? WaitingFor
    {
        get
        {
            try
            {
                return FlowOf(Newest).Judge(taker.Take()) is { } refusal ? refusal : null;
            }
            catch (StepRefusedException refused)
            {
                return refused.Diagnostic;
            }
        }
    }

    /// <summary>Weighs the car as it stands; begins a rotation when none goes on.</summary>
    public RotationRecord Record(string who) => Take(who, newest =>
    {
        var reading = taker.Take();
        return FlowOf(newest).Judge(reading) is { } refusal
            ? throw new StepRefusedException(refusal)
            : new RotationEvent { Rotation = newest is { IsOpen: true } open ? open.Id : 0, Weighed = reading };
    });

    /// <summary>Throws a weighing away, by its number from 1; it is to be weighed again.</summary>
    public RotationRecord ThrowAway(int number, string who) => Take(who, newest =>
    {
        var open = Open(newest);
        return number < 1 || number > open.Flow.Taken.Count
            ? throw new StepRefusedException(CalibrationCodes.OutOfStep.Because($"there is no placement {number} among {open.Flow.Taken.Count}"))
            : new RotationEvent { Rotation = open.Id, ThrownAway = number };
    });

    /// <summary>Puts the outcome on record.</summary>
    public RotationRecord Finish(string who, string note) => Take(who, newest =>
    {
        var open = Open(newest);
        var outcome = open.Flow.Outcome();
        return outcome.Result is { } result
            ? new RotationEvent { Rotation = open.Id, Finished = result, Note = note }
            : throw new StepRefusedException(outcome.Refused!);
    });

    /// <summary>Gives it up.</summary>
    public RotationRecord Abandon(string who, string reason) => Take(who, newest => new RotationEvent { Rotation = Open(newest).Id, Ended = reason });

    // After one that has ended the next weighing begins anew.
    private static RotationFlow FlowOf(RotationRecord? rotation) => rotation is { IsOpen: true } open ? open.Flow : new();

    private static RotationRecord Open(RotationRecord? newest) =>
        newest is { IsOpen: true } open ? open : throw new StepRefusedException(CalibrationCodes.NoInterchangeRunning.Because("nothing was weighed yet"));

    private RotationRecord Take(string who, Func<RotationRecord?, RotationEvent> judge) =>
        _flow.Take(ledger.Bay, book => RotationLedger.Steps.Entry(clock.ToUtc(clock.NowNs), who, judge(book.Newest))).Newest!;
}
