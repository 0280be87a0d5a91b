using System.Text.Json.Serialization;
using ScaleLink.Weighing.Pads;

namespace ScaleLink.Daemon.Bay;

/// <summary>The reading of an empty pad.</summary>
/// <param name="SerialNumber">The pad it belongs to.</param>
/// <param name="Counts">Counts summed over the cells, as they were trimmed then.</param>
/// <param name="TakenAt">UTC.</param>
/// <param name="Who">Who took it.</param>
/// <param name="ShiftKg">Change against the zero before, kg; absent for the first.</param>
internal sealed record ZeroPoint(string SerialNumber, double Counts, DateTimeOffset TakenAt, string Who, double? ShiftKg)
{
    /// <summary>Counts of each cell, so that other trims can add them up anew; absent in old entries.</summary>
    public IReadOnlyList<double>? CellCounts { get; init; }

    /// <summary>Temperature of the pad, degrees Celsius.</summary>
    public double? TemperatureC { get; init; }

    /// <summary>The same instant on the monotonic clock of the run that took it; absent in what was read back.</summary>
    [JsonIgnore]
    public long? TakenNs { get; init; }

    /// <summary>Shift from the zero of the calibration procedure, kg; absent for a pad that was not calibrated.</summary>
    [JsonPropertyName("SinceProofKg")]
    public double? SinceCalibrationKg { get; init; }

    /// <summary>Why it was taken although the pad did not look empty; absent when it did.</summary>
    public string? Because { get; init; }

    /// <summary>The counts as a calibration adds them up; nothing when they do not fit its cells.</summary>
    public double? Trimmed(PadCalibration calibration)
    {
        ArgumentNullException.ThrowIfNull(calibration);
        var trim = calibration.CellTrim;
        if (CellCounts is { } cells)
            return cells.Count == trim.Count ? cells.Zip(trim, (c, t) => c * t).Sum() : null;
        // Entries without cells were added up untrimmed.
        return trim.All(t => t == 1) ? Counts : null;
    }
}
