using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Weighing.PadInterchange;

namespace ScaleLink.Daemon.Workflows.PadInterchange;

/// <summary>
/// Where the pads are interchanged under one car: one pad interchange at a time. Every step that it acknowledges is in the ledger first, so
/// that it goes on after a restart, which moving pads may need. Refusals are thrown as <see cref="StepRefusedException"/> and change nothing.
/// </summary>
internal sealed class InterchangeDesk(PlacementTaker taker, InterchangeLedger ledger, BayClock clock)
{
    private readonly Workflow<InterchangeBook> _flow = ledger.TakeUp();

    /// <summary>The pad interchange that goes on, or the last one; absent before the first.</summary>
    public InterchangeRecord? Newest => _flow.State.Newest;

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

    /// <summary>Weighs the car as it stands; begins a pad interchange when none goes on.</summary>
    public InterchangeRecord Record(string who) => Take(who, newest =>
    {
        var reading = taker.Take();
        return FlowOf(newest).Judge(reading) is { } refusal
            ? throw new StepRefusedException(refusal)
            : new InterchangeEvent { Interchange = newest is { IsOpen: true } open ? open.Id : 0, Weighed = reading };
    });

    /// <summary>Throws a weighing away, by its number from 1; it is to be weighed again.</summary>
    public InterchangeRecord ThrowAway(int number, string who) => Take(who, newest =>
    {
        var open = Open(newest);
        return number < 1 || number > open.Flow.Taken.Count
            ? throw new StepRefusedException(CalibrationCodes.OutOfStep.Because($"there is no placement {number} among {open.Flow.Taken.Count}"))
            : new InterchangeEvent { Interchange = open.Id, ThrownAway = number };
    });

    /// <summary>Puts the outcome on record.</summary>
    public InterchangeRecord Finish(string who, string note) => Take(who, newest =>
    {
        var open = Open(newest);
        var outcome = open.Flow.Outcome();
        return outcome.Result is { } result
            ? new InterchangeEvent { Interchange = open.Id, Finished = result, Note = note }
            : throw new StepRefusedException(outcome.Refused!);
    });

    /// <summary>Gives it up.</summary>
    public InterchangeRecord Abandon(string who, string reason) => Take(who, newest => new InterchangeEvent { Interchange = Open(newest).Id, Ended = reason });

    // After one that has ended the next weighing begins anew.
    private static InterchangeFlow FlowOf(InterchangeRecord? interchange) => interchange is { IsOpen: true } open ? open.Flow : new();

    private static InterchangeRecord Open(InterchangeRecord? newest) =>
        newest is { IsOpen: true } open ? open : throw new StepRefusedException(CalibrationCodes.NoInterchangeRunning.Because("nothing was weighed yet"));

    private InterchangeRecord Take(string who, Func<InterchangeRecord?, InterchangeEvent> judge) =>
        _flow.Take(ledger.Bay, book => InterchangeLedger.Steps.Entry(clock.ToUtc(clock.NowNs), who, judge(book.Newest))).Newest!;
}
