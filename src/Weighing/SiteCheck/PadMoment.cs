namespace ScaleLink.Weighing.SiteCheck;

/// <summary>About one second of an empty pad.</summary>
/// <param name="Seconds">Since the watch began.</param>
/// <param name="Kg">Mean load with the zero taken off that was in effect when the watch began, kg.</param>
/// <param name="TemperatureC">°C; null without a thermometer.</param>
/// <param name="PitchDeg">Degrees, ISO 8855; null without an inclinometer.</param>
/// <param name="RollDeg">Degrees, ISO 8855; null without an inclinometer.</param>
readonly record struct PadMoment(double Seconds, double Kg, double? TemperatureC = null, double? PitchDeg = null, double? RollDeg = null);
