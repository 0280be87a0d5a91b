using ScaleLink.Daemon.Links;

namespace ScaleLink.Daemon.Bay;

/// <summary>A sample on its way to readers of the sample feed.</summary>
/// <param name="Raw">As the pad sent it.</param>
/// <param name="AtNs">Its instant on the daemon's clock.</param>
/// <param name="LoadKg">With zero and span applied; absent without them, or when the converter was not sound.</param>
internal readonly record struct TakenSample(RawSample Raw, long AtNs, double? LoadKg);
