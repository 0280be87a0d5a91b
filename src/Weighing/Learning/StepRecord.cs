using ScaleLink.Weighing.Balance;

namespace ScaleLink.Weighing.Learning;

/// <summary>One adjustment and what was weighed after the car had settled.</summary>
/// <param name="Turns">What the crew says was turned, turns, up positive.</param>
/// <param name="After">The loads weighed afterwards.</param>
/// <param name="Settled">False when the reading was taken before the car had come to rest.</param>
public sealed record StepRecord(Corners Turns, LoadSummary After, bool Settled = true);
