using ScaleLink.Weighing.SiteCheck;

namespace ScaleLink.Daemon.Workflows.SiteCheck;

/// <summary>How the watching stands at one instant.</summary>
/// <param name="Now">The watch that is under way; null when none is.</param>
/// <param name="Last">The newest that has ended; null before the first.</param>
internal sealed record SiteCheckState(SiteCheckProgress? Now, SiteCheckRecord? Last);

/// <summary>A watch that is under way.</summary>
/// <param name="Record">As begun.</param>
/// <param name="Seconds">Since its beginning.</param>
/// <param name="SoFar">What would be said if it ended now; null in its first seconds.</param>
internal sealed record SiteCheckProgress(SiteCheckRecord Record, double Seconds, SiteCheckReport? SoFar);
