namespace ScaleLink.Weighing.Pads;

/// <summary>One settled reading of a pad, as taken for a calibration procedure, a zero or a corner-load test.</summary>
sealed record PadReading
{
    /// <summary>When, UTC.</summary>
    public required DateTimeOffset Time { get; init; }

    /// <summary>Mean counts of each cell.</summary>
    public required IReadOnlyList<double> CellCounts { get; init; }

    /// <summary>Largest minus smallest count of each cell within the reading.</summary>
    public required IReadOnlyList<double> CellSpreads { get; init; }

    /// <summary>True when the load was at rest.</summary>
    public required bool Settled { get; init; }

    /// <summary>Cells whose converter was at its end, from 1.</summary>
    public IReadOnlyList<int> SaturatedCells { get; init; } = [];

    /// <summary>Temperature of the pad, °C, where it has a thermometer.</summary>
    public double? TemperatureC { get; init; }

    /// <summary>Tilt about y, degrees, where the pad has an inclinometer.</summary>
    public double? PitchDeg { get; init; }

    /// <summary>Tilt about x, degrees.</summary>
    public double? RollDeg { get; init; }

    /// <summary>Loads of the whole bay at the same time, kg, for noticing masses on another pad.</summary>
    public Corners? BayLoadsKg { get; init; }
}
