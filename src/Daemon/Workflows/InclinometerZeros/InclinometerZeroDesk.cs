using System.Collections.Immutable;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Weighing.InclinometerZeros;

namespace ScaleLink.Daemon.Workflows.InclinometerZeros;

/// <summary>
/// Where the zeros of the pads' inclinometers are tested. A test belongs to the pad, not to the place, and goes on after a restart; every
/// step that is acknowledged is in the ledger first. A refusal changes nothing.
/// </summary>
internal sealed class InclinometerZeroDesk(InclinometerZeroLedger ledger, BayConfiguration bay, BayClock clock)
{
    private readonly Workflow<ImmutableDictionary<string, InclinometerZeroRecord>> _flow = ledger.TakeUp();
    private readonly TiltTaker _taker = new(bay.Weigh.RaisedBelowKg, clock);

    /// <summary>How the inclinometer of the pad at that corner stands; nothing while nobody knows which pad that is.</summary>
    public InclinometerZeroStanding? At(PadChannel pad) => pad.Standing.Identity is { } identity ? Standing(pad, identity.SerialNumber) : null;

    /// <summary>Takes the next reading of a test, beginning one when none goes on. The last one puts the zero into effect.</summary>
    /// <param name="pad">The pad, empty and at rest.</param>
    /// <param name="step">What the caller sees.</param>
    /// <param name="who">For the ledger.</param>
    public void Read(PadChannel pad, InclinometerZeroStep step, string who) => Take(pad, step.SerialNumber, who, standing =>
    {
        var (taken, refused) = _taker.Take(pad);
        if (taken is null)
            throw new StepRefusedException(refused!);
        var test = standing.Test?.Test ?? new InclinometerTest();
        if (step.Number is { } number && number != test.NextNumber)
            throw OutOfStep($"Reading {test.NextNumber} of {InclinometerTest.Needed} comes next, not {number}. {standing.CutShort}".TrimEnd(), "Look at the test again: somebody else may have read, or it was begun anew.");
        var reading = taken with { SaidTurned = step.SaidTurned && test.NextNumber > 1 };
        return test.WhyNot(reading) is { } why ? throw new StepRefusedException(why) : With(pad, standing, test.With(reading), who);
    });

    /// <summary>Gives the test up that goes on; the zero before stays in effect.</summary>
    public void Abandon(PadChannel pad, string serialNumber, string who) => Take(pad, serialNumber, who, standing => standing.Test is null
        ? throw OutOfStep($"No test of {standing.SerialNumber} goes on.", "Begin one with a reading.")
        : new InclinometerZeroRecord { Zero = standing.Zero });

    /// <summary>Takes the zero out of force: the pad counts as never tested. A test that goes on is given up.</summary>
    public void Clear(PadChannel pad, string serialNumber, string who) => Take(pad, serialNumber, who, standing => standing.Zero is null
        ? throw OutOfStep($"{standing.SerialNumber} has no tested zero.", "Nothing has to be cleared.")
        : new InclinometerZeroRecord());

    private InclinometerZeroRecord With(PadChannel pad, InclinometerZeroStanding standing, InclinometerTest test, string who)
    {
        var source = Recognition.TiltSourceOf(pad.Configuration);
        if (test.Readings.Count < InclinometerTest.Needed)
            return new InclinometerZeroRecord { Zero = standing.Zero, Test = new OpenInclinometerTest(test, pad.Name, source) };
        var (zero, refused) = test.Outcome();
        return zero is null
            ? throw new StepRefusedException(refused!)
            : new InclinometerZeroRecord { Zero = new SavedInclinometerZero(zero, Now, who, source) { TemperatureC = test.Readings[^1].TemperatureC } };
    }

    // The pad has its zero before anybody else takes a step.
    private void Take(PadChannel pad, string wanted, string who, Func<InclinometerZeroStanding, InclinometerZeroRecord> judge) => _flow.Alone(() =>
    {
        var standing = Find(pad, wanted);
        var after = _flow.Take(standing.SerialNumber, _ => InclinometerZeroLedger.Steps.Entry(Now, who, judge(standing) with { Bay = bay.Bay }));
        pad.Adopt(standing.SerialNumber, after[standing.SerialNumber].Zero);
    });

    private InclinometerZeroStanding Find(PadChannel pad, string wanted)
    {
        var standing = At(pad) ?? throw new StepRefusedException(PadStateCodes.NotLive, $"{pad.Corner} is not live.", "Repair its link first, then go on.");
        return wanted.Length > 0 && wanted != standing.SerialNumber
            ? throw OutOfStep($"{standing.SerialNumber} is at {pad.Corner} now, not {wanted}.", "Look where the pad is: scalelink pads.")
            : standing;
    }

    private static StepRefusedException OutOfStep(Sentence message, Sentence remedy) => new(InclinometerCodes.OutOfStep, message, remedy);

    private InclinometerZeroStanding Standing(PadChannel pad, string serialNumber)
    {
        var record = _flow.State.GetValueOrDefault(serialNumber) ?? new InclinometerZeroRecord();
        var source = Recognition.TiltSourceOf(pad.Configuration);
        var cut = record.Test?.CutShort(pad.Name, source, Now);
        return new InclinometerZeroStanding(serialNumber, record.Zero?.Source == source ? record.Zero : null, cut is null ? record.Test : null, cut ?? "");
    }

    private DateTimeOffset Now => clock.ToUtc(clock.NowNs);
}
