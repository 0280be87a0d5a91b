using ScaleLink.Weighing.Balance;

namespace ScaleLink.Weighing.WorkSessions.Planning;

/// <summary>What the crew will read after the turns and a settling.</summary>
/// <param name="Loads">The four loads and their sums; uncertainty covers the car, the settling and the readings.</param>
/// <param name="CrossWeightPercent">Cross weight on the next reading, percent, from all readings of the session together.</param>
/// <param name="HeightChangesMm">Change of ride height at each corner, mm.</param>
/// <param name="HeightUncertaintiesMm">One standard uncertainty of each, mm: uncertainty about the car only.</param>
sealed record PlanForecast(LoadSummary Loads, Value CrossWeightPercent, Corners HeightChangesMm, Corners HeightUncertaintiesMm);
