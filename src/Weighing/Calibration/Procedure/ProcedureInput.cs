using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Calibration.Results;
using ScaleLink.Weighing.Calibration.Trim;
using ScaleLink.Weighing.Pads;

namespace ScaleLink.Weighing.Calibration.Procedure;

/// <summary>What the calibration procedure must reach to be accepted.</summary>
/// <param name="ExpandedKg">Half-width of the interval of the given coverage, kg.</param>
/// <param name="AtKg">At this load, kg.</param>
/// <param name="Coverage">For example 0.95.</param>
sealed record AskedUncertainty(double ExpandedKg, double AtKg, double Coverage = 0.95);

/// <summary>Everything that a finished calibration procedure brings with it.</summary>
sealed record ProcedureInput
{
    /// <summary>The calibration in effect before: capacity, cells, place to compare with.</summary>
    public required PadCalibration Before { get; init; }

    /// <summary>The masses.</summary>
    public required MassSet Masses { get; init; }

    /// <summary>The points, in the order read.</summary>
    public required IReadOnlyList<ProcedurePoint> Points { get; init; }

    /// <summary>Where.</summary>
    public required Place Place { get; init; }

    /// <summary>When, UTC.</summary>
    public required DateTimeOffset Time { get; init; }

    /// <summary>Who.</summary>
    public string Who { get; init; } = "";

    /// <summary>Mean temperature of the pad, °C.</summary>
    public double? TemperatureC { get; init; }

    /// <summary>Step of the trimmed sum of counts.</summary>
    public double ResolutionCounts { get; init; } = 1;

    /// <summary>Outcome of a corner-load test, when there was one; its trims are in the points' counts.</summary>
    public CellTrims? Trims { get; init; }

    /// <summary>Mass of the corner-load test, kg.</summary>
    public double TrimLoadKg { get; init; }

    /// <summary>Change under a lasting load, when it was tested.</summary>
    public Creep? Creep { get; init; }

    /// <summary>Change of span per kelvin, relative, from the data sheet.</summary>
    public double? SpanPerKelvin { get; init; }

    /// <summary>What must be reached; null to accept what comes.</summary>
    public AskedUncertainty? Asked { get; init; }
}
