using ScaleLink.Weighing.InclinometerZeros;

namespace ScaleLink.Weighing.SiteCheck;

/// <summary>One empty pad that was watched, and what its calibration says.</summary>
/// <param name="Corner">Where it stands.</param>
/// <param name="Moments">In the order of time.</param>
sealed record WatchedPad(Corner Corner, IReadOnlyList<PadMoment> Moments)
{
    /// <summary>One standard uncertainty that the calibration leaves in the load expected here, temperature left out, kg.</summary>
    public double CalibrationKg { get; init; }

    /// <summary>True once calibrated with known masses.</summary>
    public bool IsCalibrated { get; init; }

    /// <summary>Temperature at which it was calibrated, °C; null when nobody knows.</summary>
    public double? CalibratedAtC { get; init; }

    /// <summary>Change of span per kelvin, relative, either way; null when no data sheet told.</summary>
    public double? SpanPerKelvin { get; init; }

    /// <summary>Whether its loads are corrected for its own tilt.</summary>
    public bool TiltIsCorrected { get; init; }

    /// <summary>One standard uncertainty of either angle of its inclinometer, degrees; as of one that was never tested unless somebody knows better.</summary>
    public double TiltUncertaintyDeg { get; init; } = InclinometerZero.UntestedDeg;
}
