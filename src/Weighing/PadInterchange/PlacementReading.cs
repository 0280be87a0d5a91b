using System.Text.Json.Serialization;

namespace ScaleLink.Weighing.PadInterchange;

/// <summary>One pad while the car stands on it.</summary>
/// <param name="Pad">Serial number.</param>
/// <param name="LoadKg">Settled load, kg.</param>
/// <param name="Calibration">Names the calibration behind the load.</param>
/// <param name="ZeroAt">When its zero was taken, UTC.</param>
sealed record PlacedPad(string Pad, double LoadKg, string Calibration, DateTimeOffset ZeroAt);

/// <summary>One weighing of the car as it goes on record.</summary>
/// <param name="Time">UTC.</param>
/// <param name="Pads">In the order LF, RF, LR, RR.</param>
sealed record PlacementReading(DateTimeOffset Time, IReadOnlyList<PlacedPad> Pads)
{
    /// <summary>Serial numbers in the order LF, RF, LR, RR.</summary>
    [JsonIgnore]
    public IReadOnlyList<string> PadAt => [.. Pads.Select(p => p.Pad)];

    /// <summary>Loads, kg.</summary>
    [JsonIgnore]
    public Corners LoadsKg => Corners.From(c => Pads[(int)c].LoadKg);
}
