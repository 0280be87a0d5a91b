using ScaleLink.Weighing.Patch;
using ScaleLink.Weighing.Patch.Files;

namespace ScaleLink.Daemon.Patch;

/// <summary>The height measurement in effect.</summary>
/// <param name="Input">As measured.</param>
/// <param name="HeightMeasurement">Adjusted.</param>
/// <param name="At">When it was saved, UTC.</param>
/// <param name="Who">Who saved it.</param>
public sealed record SavedHeightMeasurement(HeightMeasurementInput Input, MeasuredHeights HeightMeasurement, DateTimeOffset At, string Who);
