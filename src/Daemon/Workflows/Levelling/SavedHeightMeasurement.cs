using ScaleLink.Weighing.Levelling;
using ScaleLink.Weighing.Levelling.Files;

namespace ScaleLink.Daemon.Workflows.Levelling;

/// <summary>The height measurement in effect.</summary>
/// <param name="Input">As measured.</param>
/// <param name="HeightMeasurement">Adjusted.</param>
/// <param name="At">When it was saved, UTC.</param>
/// <param name="Who">Who saved it.</param>
internal sealed record SavedHeightMeasurement(HeightMeasurementInput Input, MeasuredHeights HeightMeasurement, DateTimeOffset At, string Who);
