using ScaleLink.Daemon.Pipeline;
using ScaleLink.Weighing.Calibration;

namespace ScaleLink.Daemon.Proving;

/// <summary>
/// Where the pads are moved round under one car: one rotation at a time. Every step that it acknowledges is in the ledger first, so
/// that it goes on after a restart, which moving pads may need. Refusals are thrown as <see cref="RefusedException"/> and change nothing.
/// </summary>
internal sealed class RotationDesk(PlacementTaker taker, RotationLedger ledger, BayClock clock)
{
    private readonly Lock _gate = new();
    private RotationRecord? _newest = ledger.All() is [.., var last] ? last : null;

    /// <summary>The rotation that goes on, or the last one; absent before the first.</summary>
    public RotationRecord? Newest
    {
        get
        {
            lock (_gate)
                return _newest;
        }
    }

    /// <summary>Serial number of the pad at each corner, in the order LF, RF, LR, RR.</summary>
    public IReadOnlyList<string> Present => taker.Present;

    /// <summary>Why <see cref="Record"/> would be refused now; absent when it would not.</summary>
    public Diagnostic? WaitingFor
    {
        get
        {
            try
            {
                return FlowOf(Newest).Judge(taker.Take());
            }
            catch (RefusedException refused)
            {
                return refused.Diagnostic;
            }
        }
    }

    /// <summary>Weighs the car as it stands; begins a rotation when none goes on.</summary>
    public RotationRecord Record(string who) => Do(() =>
    {
        var reading = taker.Take();
        if (FlowOf(_newest).Judge(reading) is { } refusal)
            throw new RefusedException(refusal);
        return _newest is not { IsOpen: true } open ? ledger.Begin(reading, who, Now) : ledger.Append(open, new RotationEvent { Weighed = reading }, who, Now);
    });

    /// <summary>Throws a weighing away, by its number from 1; it is to be weighed again.</summary>
    public RotationRecord ThrowAway(int number, string who) => Do(() =>
    {
        var open = Open();
        if (number < 1 || number > open.Flow.Taken.Count)
            throw new RefusedException(CalibrationCodes.OutOfStep.Because($"there is no placement {number} among {open.Flow.Taken.Count}"));
        return ledger.Append(open, new RotationEvent { ThrownAway = number }, who, Now);
    });

    /// <summary>Puts the outcome on record.</summary>
    public RotationRecord Finish(string who, string note) => Do(() =>
    {
        var open = Open();
        var outcome = open.Flow.Outcome();
        return outcome.Result is { } result
            ? ledger.Append(open, new RotationEvent { Finished = result, Note = note }, who, Now)
            : throw new RefusedException(outcome.Refused!);
    });

    /// <summary>Gives it up.</summary>
    public RotationRecord Abandon(string who, string reason) => Do(() => ledger.Append(Open(), new RotationEvent { Ended = reason }, who, Now));

    // After one that has ended the next weighing begins anew.
    private static RotationFlow FlowOf(RotationRecord? rotation) => rotation is { IsOpen: true } open ? open.Flow : new();

    private DateTimeOffset Now => clock.ToUtc(clock.NowNs);

    private RotationRecord Open() => _newest is { IsOpen: true } open ? open : throw new RefusedException(CalibrationCodes.NoInterchangeRunning.Because("nothing was weighed yet"));

    private RotationRecord Do(Func<RotationRecord> act)
    {
        lock (_gate)
            return _newest = act();
    }
}
