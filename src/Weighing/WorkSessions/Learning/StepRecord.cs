using ScaleLink.Weighing.Balance;

namespace ScaleLink.Weighing.WorkSessions.Learning;

/// <summary>One adjustment and what was weighed after the car had settled.</summary>
/// <param name="Turns">What the crew says was turned, turns, up positive.</param>
/// <param name="After">The loads weighed afterwards.</param>
/// <param name="Settled">False when the reading was taken before the car had come to rest.</param>
/// <param name="Confirmed">True when the crew looked for mishaps and found none: then even a surprising step is believed.</param>
sealed record StepRecord(Corners Turns, LoadSummary After, bool Settled = true, bool Confirmed = false);
