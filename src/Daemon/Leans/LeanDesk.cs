using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Pipeline;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Patch;

namespace ScaleLink.Daemon.Leans;

/// <summary>
/// Where the zeros of the pads' inclinometers are tested. A test belongs to the pad, not to the place, and goes on after a restart; every
/// step that is acknowledged is in the ledger first. A refusal changes nothing.
/// </summary>
internal sealed class LeanDesk(LeanLedger ledger, BayConfiguration bay, BayClock clock)
{
    private readonly Lock _gate = new();
    private readonly LeanTaker _taker = new(bay.Weigh.RaisedBelowKg, clock);

    /// <summary>How the inclinometer of the pad at that corner stands; nothing while nobody knows which pad that is.</summary>
    public LeanStanding? At(PadChannel pad) => pad.Standing.Identity is { } identity ? Standing(pad, identity.SerialNumber) : null;

    /// <summary>Takes the next reading of a test, beginning one when none goes on. The last one puts the zero into force.</summary>
    /// <param name="pad">The pad, empty and at rest.</param>
    /// <param name="step">What the caller sees.</param>
    /// <param name="who">For the ledger.</param>
    /// <returns>Why it was refused; nothing when it was taken.</returns>
    public Diagnostic? Read(PadChannel pad, LeanStep step, string who)
    {
        lock (_gate)
        {
            if (Find(pad, step.SerialNumber, out var standing) is { } other)
                return other;
            var (taken, refused) = _taker.Take(pad);
            if (taken is null)
                return refused;
            var test = standing!.Test?.Test ?? new LeanTest();
            if (step.Number is { } number && number != test.NextNumber)
                return new(InclinometerCodes.OutOfStep, $"Reading {test.NextNumber} of {LeanTest.Needed} comes next, not {number}. {standing.CutShort}".TrimEnd(), "Look at the test again: somebody else may have read, or it was begun anew.");
            var reading = taken with { SaidTurned = step.SaidTurned && test.NextNumber > 1 };
            if (test.WhyNot(reading) is { } why)
                return why;
            return Keep(pad, standing, test.With(reading), who);
        }
    }

    /// <summary>Gives the test up that goes on; the zero before stays in force.</summary>
    public Diagnostic? Abandon(PadChannel pad, string serialNumber, string who)
    {
        lock (_gate)
        {
            if (Find(pad, serialNumber, out var standing) is { } refused)
                return refused;
            if (standing!.Test is null)
                return new(InclinometerCodes.OutOfStep, $"No test of {standing.SerialNumber} goes on.", "Begin one with a reading.");
            Write(pad, standing.SerialNumber, new LeanRecord { Zero = standing.Zero }, who);
            return null;
        }
    }

    /// <summary>Takes the zero out of force: the pad counts as never tested. A test that goes on is given up.</summary>
    public Diagnostic? Clear(PadChannel pad, string serialNumber, string who)
    {
        lock (_gate)
        {
            if (Find(pad, serialNumber, out var standing) is { } refused)
                return refused;
            if (standing!.Zero is null)
                return new(InclinometerCodes.OutOfStep, $"{standing.SerialNumber} has no tested zero.", "Nothing has to be cleared.");
            Write(pad, standing.SerialNumber, new LeanRecord(), who);
            return null;
        }
    }

    private Diagnostic? Keep(PadChannel pad, LeanStanding standing, LeanTest test, string who)
    {
        var source = Recognition.TiltSourceOf(pad.Configuration);
        if (test.Readings.Count < LeanTest.Needed)
        {
            Write(pad, standing.SerialNumber, new LeanRecord { Zero = standing.Zero, Test = new OpenLeanTest(test, pad.Name, source) }, who);
            return null;
        }

        var (zero, refused) = test.Outcome();
        if (zero is null)
            return refused;
        Write(pad, standing.SerialNumber, new LeanRecord { Zero = new SavedLeanZero(zero, Now, who, source) { TemperatureC = test.Readings[^1].TemperatureC } }, who);
        return null;
    }

    private void Write(PadChannel pad, string serialNumber, LeanRecord record, string who)
    {
        ledger.Append(serialNumber, record with { Bay = bay.Bay }, who, Now);
        pad.Adopt(serialNumber, record.Zero);
    }

    private Diagnostic? Find(PadChannel pad, string wanted, out LeanStanding? standing)
    {
        standing = At(pad);
        if (standing is null)
            return new(PadStateCodes.NotLive, $"{pad.Corner} is not live.", "Repair its link first, then go on.");
        return wanted.Length > 0 && wanted != standing.SerialNumber
            ? new(InclinometerCodes.OutOfStep, $"{standing.SerialNumber} is at {pad.Corner} now, not {wanted}.", "Look where the pad is: scalelink pads.")
            : null;
    }

    private LeanStanding Standing(PadChannel pad, string serialNumber)
    {
        var record = ledger.Of(serialNumber);
        var source = Recognition.TiltSourceOf(pad.Configuration);
        var cut = record.Test?.CutShort(pad.Name, source, Now);
        return new LeanStanding(serialNumber, record.Zero?.Source == source ? record.Zero : null, cut is null ? record.Test : null, cut ?? "");
    }

    private DateTimeOffset Now => clock.ToUtc(clock.NowNs);
}
