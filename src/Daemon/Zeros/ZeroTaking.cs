using ScaleLink.Daemon.Pipeline;
using ScaleLink.Weighing.Calibration;
using ScaleLink.Weighing.Pads;
using ZeroPoint = ScaleLink.Daemon.Pipeline.ZeroPoint;

namespace ScaleLink.Daemon.Zeros;

/// <summary>Takes a zero of one pad, or says why not.</summary>
public sealed class ZeroTaking(BayClock clock, IZeroStore store)
{
    // A zero hardly feels tilt; it is refused only where loads are not corrected any more.
    private static readonly ZeroLimits Limits = new() { Reading = new ReadingLimits { TiltDeg = TiltCorrection.LimitDegrees } };

    // Older ones say little of how the pad is now.
    private const int DriftZeros = 50;

    /// <summary>Takes the mean of the last seconds as zero and writes it to the ledger.</summary>
    /// <param name="pad">The pad.</param>
    /// <param name="who">Who says that it is empty.</param>
    /// <param name="because">Why a pad of which no zero is known is empty although it does not look so; empty to refuse.</param>
    public (ZeroPoint? Zero, Diagnostic? Refused) Take(PadChannel pad, string who, string because = "")
    {
        ArgumentNullException.ThrowIfNull(pad);
        if (pad.Observe() is not { } seen)
            return Refuse(PadStateCodes.NotLive, $"{pad.Corner} is not live.", "Repair its link first, then zero again.");
        var (_, calibration, old) = pad.Standing;
        if (calibration is null)
            return Refuse(PadStateCodes.NoSensitivity, $"{pad.Corner} has no calibration.", "Give kg_per_count in the bay file first.");
        var limits = because.Length > 0 ? Limits with { FirstShare = double.PositiveInfinity } : Limits;
        var (zero, refusals) = ZeroCapture.Judge(calibration, seen.Reading, limits, Reference(calibration, old));
        if (zero is null)
            return Refuse(refusals[0].Code, $"{pad.Corner}: {refusals[0].Message}", refusals[0].Remedy);

        var taken = new ZeroPoint(seen.Identity.SerialNumber, zero.Counts, clock.ToUtc(clock.NowNs), who, old is null ? null : ShiftFrom(old, calibration, zero))
        {
            CellCounts = seen.Reading.CellCounts,
            TemperatureC = seen.Reading.TemperatureC,
            SinceProofKg = calibration.IsProved ? calibration.Kg(zero.Counts - calibration.ZeroCounts) : null,
            Because = because.Length > 0 ? because : null,
        };
        store.Append(taken);
        pad.Adopt(taken);
        pad.OnTroubleOver(PadStateCodes.EmptyPadReads);
        WarnOfDrift(pad, calibration);
        return (taken, null);
    }

    // Warns and no more: the zero just taken is good.
    private void WarnOfDrift(PadChannel pad, PadCalibration calibration)
    {
        var zeros = store.History(calibration.Pad).Where(z => !calibration.IsProved || z.TakenAt >= calibration.Time)
            .Select(z => (Zero: z, Counts: z.Trimmed(calibration))).Where(z => z.Counts is not null).TakeLast(DriftZeros).ToList();
        var drift = ZeroDrift.Judge(
            [.. zeros.Select(z => new Weighing.Calibration.ZeroPoint(z.Zero.TakenAt, calibration.Kg(z.Counts!.Value - zeros[0].Counts!.Value), z.Zero.TemperatureC))], ClassGrade.UsualIntervalKg);
        if (drift.Findings is [var finding, ..])
            pad.OnTrouble(finding.Code, finding.Message, finding.Remedy, stops: false);
        else
            pad.OnTroubleOver(CalibrationCodes.ZeroDrifts);
    }

    // The proof saw the pad empty; without one, whoever took the last zero did.
    private static double? Reference(PadCalibration calibration, ZeroPoint? old) => calibration.IsProved ? calibration.ZeroCounts : old?.Trimmed(calibration);

    private static double? ShiftFrom(ZeroPoint old, PadCalibration calibration, CapturedZero zero) =>
        old.Trimmed(calibration) is { } before ? calibration.Kg(zero.Counts - before) : null;

    private (ZeroPoint?, Diagnostic?) Refuse(Code code, string message, string remedy) => (null, new Diagnostic(code, message, remedy) { SinceNs = clock.NowNs });
}
