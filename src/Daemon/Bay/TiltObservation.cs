using ScaleLink.Daemon.Links;

namespace ScaleLink.Daemon.Bay;

/// <summary>The last seconds of a pad's inclinometer as it says them, its zero still in them.</summary>
/// <param name="Identity">The pad.</param>
/// <param name="Samples">Pitch and roll, degrees, oldest first; empty while the tilt is not known.</param>
/// <param name="IsWhole">Whether they fill the window and are fresh.</param>
/// <param name="TemperatureC">Of the pad, degrees Celsius.</param>
internal sealed record TiltObservation(PadIdentity Identity, IReadOnlyList<(double PitchDeg, double RollDeg)> Samples, bool IsWhole, double? TemperatureC);
