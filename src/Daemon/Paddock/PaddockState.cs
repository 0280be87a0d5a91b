using ScaleLink.Weighing.Patch.Paddock;

namespace ScaleLink.Daemon.Paddock;

/// <summary>How the watching stands at one instant.</summary>
/// <param name="Now">The watch that is under way; null when none is.</param>
/// <param name="Last">The newest that has ended; null before the first.</param>
public sealed record PaddockState(PaddockProgress? Now, PaddockRecord? Last);

/// <summary>A watch that is under way.</summary>
/// <param name="Record">As begun.</param>
/// <param name="Seconds">Since its beginning.</param>
/// <param name="SoFar">What would be said if it ended now; null in its first seconds.</param>
public sealed record PaddockProgress(PaddockRecord Record, double Seconds, PaddockReport? SoFar);
