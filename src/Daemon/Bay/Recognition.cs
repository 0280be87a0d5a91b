using System.Collections.Frozen;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Links;
using ScaleLink.Weighing.Calibration.Procedure;
using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Zeros;

namespace ScaleLink.Daemon.Bay;

/// <summary>What is on record of a pad that has said who it is: its calibration and zero, and whether they still belong to it.</summary>
internal static class Recognition
{
    /// <summary>Everything that hangs on the pad that was there.</summary>
    public static readonly FrozenSet<Code> Codes = [PadStateCodes.NoZero, PadStateCodes.NoSensitivity, PadStateCodes.PadChanged, PadStateCodes.ZeroMovedSinceCalibration];

    // Capacities are round numbers; they differ by rounding on the way at most.
    private const double SameCapacity = 1e-3;

    /// <summary>Puts calibration and zero of the pad into effect.</summary>
    public static void Of(PadIdentity identity, PadConfiguration configuration, PadRecords records, PadScale scale, FaultSet faults, long nowNs)
    {
        var calibrated = records.Calibrations.InEffect(identity.SerialNumber);
        var isChanged = calibrated is not null && !Fits(calibrated, identity);
        scale.Use(calibrated is not null && !isChanged ? calibrated : Starting(identity, configuration, records.Here));
        var zero = records.Zeros.Latest(identity.SerialNumber);
        scale.Use(isChanged || zero?.CellCounts is { } cells && cells.Count != identity.Cells ? null : zero);
        if (scale.Zero is { } known)
            scale.Track = new ZeroTrack(records.Zeros.TrackedKg(known));
        faults.Set(isChanged, PadStateCodes.PadChanged,
            $"The pad has changed since it was calibrated: {identity.Cells} cells and {Kg(identity.CapacityKg):0.#} now, {calibrated?.CellTrim.Count} and {Kg(calibrated?.CapacityKg ?? 0):0.#} then. Its calibration and its zero are void.",
            "Zero it and calibrate it again. If it is another pad, give it a serial number of its own.", nowNs);
        Tell(scale, faults, nowNs);
    }

    /// <summary>The tested zero of the inclinometer; nothing when the angles come from another one than was tested.</summary>
    public static SavedInclinometerZero? InclinometerZero(PadIdentity identity, PadConfiguration configuration, PadRecords records) =>
        records.InclinometerZeros?.InEffect(identity.SerialNumber) is { } zero && zero.Source == TiltSourceOf(configuration) ? zero : null;

    /// <summary>Names the inclinometer: empty when it is the pad's own, which goes where the pad goes.</summary>
    public static string TiltSourceOf(PadConfiguration configuration) => configuration.Tilt switch
    {
        null => "",
        { Modbus: { } modbus } bus => $"{bus.Link} slave {modbus.Slave}",
        var other => other.Link,
    };

    /// <summary>Says what is missing and what has moved.</summary>
    public static void Tell(PadScale scale, FaultSet faults, long nowNs)
    {
        faults.Set(scale is { Zero: null, Calibration: not null }, PadStateCodes.NoZero, "The pad has no zero.", "Empty the pads and take a zero.", nowNs);
        faults.Set(scale.Calibration is null, PadStateCodes.NoSensitivity, "The pad has no calibration.",
            "Calibrate the pad with known masses; or give kg_per_count in the bay file, by the cells' data sheet, and calibrate it later.", nowNs);
        var shift = scale.Calibration is { IsCalibrated: true } c && c.Kg((scale.Zero?.Trimmed(c) ?? c.ZeroCounts) - c.ZeroCounts) is var kg
            && Math.Abs(kg) > ProcedureComparison.ZeroShare * c.CapacityKg ? kg : (double?)null;
        faults.Set(shift is not null, PadStateCodes.ZeroMovedSinceCalibration, $"The empty pad stands {Kg(shift ?? 0):+0.0} from where it stood at its calibration procedure.",
            "Look for a hit, a bent platform, a lost or added part, a damaged cell; then calibrate the pad again.", nowNs);
    }

    /// <summary>The calibration of the bay file; nothing when it gives none.</summary>
    public static PadCalibration? Starting(PadIdentity identity, PadConfiguration configuration, Place here)
    {
        if (configuration.KgPerCount is not { } kgPerCount)
            return null;
        try
        {
            // Without a time of its own: the same numbers are the same calibration in every run.
            return PadCalibration.Starting(identity.SerialNumber, kgPerCount, configuration.SpanUncertaintyPercent / 100, identity.CapacityKg, identity.Cells, here, DateTimeOffset.UnixEpoch);
        }
        catch (RefusedException)
        {
            // A pad that states no capacity, say: without sense there is no calibration.
            return null;
        }
    }

    private static bool Fits(PadCalibration calibration, PadIdentity identity) =>
        calibration.CellTrim.Count == identity.Cells && Math.Abs(calibration.CapacityKg - identity.CapacityKg) <= SameCapacity * calibration.CapacityKg;
}
