using System.Collections.Immutable;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Weighing.Calibration.Results;
using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Zeros;
using ZeroPoint = ScaleLink.Daemon.Bay.ZeroPoint;

namespace ScaleLink.Daemon.Workflows.Zeros;

/// <summary>Takes a zero of one pad, or says why not.</summary>
internal sealed class ZeroTaking(BayClock clock, ZeroLedger store)
{
    // A zero hardly feels tilt; it is refused only where loads are not corrected any more.
    private static readonly ZeroLimits Limits = new() { Reading = new ReadingLimits { TiltDeg = TiltCorrection.LimitDegrees } };

    // Older ones say little of how the pad is now.
    private const int DriftZeros = 50;

    private readonly Workflow<ImmutableDictionary<string, ZeroPoint>> _flow = store.Begin();

    /// <summary>Takes the mean of the last seconds as zero and writes it to the ledger.</summary>
    /// <param name="pad">The pad.</param>
    /// <param name="who">Who says that it is empty.</param>
    /// <param name="because">Why a pad of which no zero is known is empty although it does not look so; empty to refuse.</param>
    public (ZeroPoint? Zero, Diagnostic? Refused) Take(PadChannel pad, string who, string because = "")
    {
        ArgumentNullException.ThrowIfNull(pad);
        try
        {
            ZeroPoint? taken = null;
            _flow.Alone(() =>
            {
                (taken, var calibration) = Judge(pad, who, because);
                _flow.Take(taken.SerialNumber, _ => ZeroLedger.Steps.Entry(taken.TakenAt, who, taken));
                pad.Adopt(taken);
                pad.OnTroubleOver(PadStateCodes.EmptyPadReads);
                WarnOfDrift(pad, calibration);
            });
            return (taken, null);
        }
        catch (StepRefusedException refused)
        {
            return (null, refused.Diagnostic with { SinceNs = clock.NowNs });
        }
    }

    private (ZeroPoint Taken, PadCalibration Calibration) Judge(PadChannel pad, string who, string because)
    {
        var seen = pad.Observe() ?? throw new StepRefusedException(PadStateCodes.NotLive, $"{pad.Corner} is not live.", "Repair its link first, then zero again.");
        var (_, known, old) = pad.Standing;
        var calibration = known ?? throw new StepRefusedException(PadStateCodes.NoSensitivity, $"{pad.Corner} has no calibration.", "Calibrate it with known masses, or give kg_per_count in the bay file.");
        var limits = because.Length > 0 ? Limits with { FirstShare = double.PositiveInfinity } : Limits;
        var (zero, refusals) = ZeroSetting.Judge(calibration, seen.Reading, limits, Reference(calibration, old));
        if (zero is null)
            throw new StepRefusedException(refusals[0].Code, $"{pad.Corner}: {refusals[0].Message}", refusals[0].Remedy);
        return (new ZeroPoint(seen.Identity.SerialNumber, zero.Counts, clock.ToUtc(clock.NowNs), who, old is null ? null : ShiftFrom(old, calibration, zero))
        {
            TakenNs = clock.NowNs,
            CellCounts = seen.Reading.CellCounts,
            TemperatureC = seen.Reading.TemperatureC,
            SinceCalibrationKg = calibration.IsCalibrated ? calibration.Kg(zero.Counts - calibration.ZeroCounts) : null,
            Because = because.Length > 0 ? because : null,
        }, calibration);
    }

    // Warns and no more: the zero just taken is good.
    private void WarnOfDrift(PadChannel pad, PadCalibration calibration)
    {
        var zeros = store.History(calibration.Pad).Where(z => !calibration.IsCalibrated || z.TakenAt >= calibration.Time)
            .Select(z => (Zero: z, Counts: z.Trimmed(calibration))).Where(z => z.Counts is not null).TakeLast(DriftZeros).ToList();
        var drift = ZeroDrift.Judge(
            [.. zeros.Select(z => new Weighing.Zeros.ZeroPoint(z.Zero.TakenAt, calibration.Kg(z.Counts!.Value - zeros[0].Counts!.Value), z.Zero.TemperatureC))], ClassGrade.UsualIntervalKg);
        if (drift.Findings is [var finding, ..])
            pad.OnTrouble(finding.Code, finding.Message, finding.Remedy, stops: false);
        else
            pad.OnTroubleOver(CalibrationCodes.ZeroDrifts);
    }

    // The calibration procedure saw the pad empty; without one, whoever took the last zero did.
    private static double? Reference(PadCalibration calibration, ZeroPoint? old) => calibration.IsCalibrated ? calibration.ZeroCounts : old?.Trimmed(calibration);

    private static double? ShiftFrom(ZeroPoint old, PadCalibration calibration, FoundZero zero) =>
        old.Trimmed(calibration) is { } before ? calibration.Kg(zero.Counts - before) : null;
}
