using ScaleLink.Daemon.Bay;

namespace ScaleLink.Daemon.Workflows.InclinometerZeros;

/// <summary>How the inclinometer of a pad stands now.</summary>
/// <param name="SerialNumber">The pad.</param>
/// <param name="Zero">In effect; absent when it was never tested.</param>
/// <param name="Test">That goes on; absent when none does.</param>
/// <param name="CutShort">Why the last test does not go on; empty when it ended as it should.</param>
internal sealed record InclinometerZeroStanding(string SerialNumber, SavedInclinometerZero? Zero, OpenInclinometerTest? Test, string CutShort);

/// <summary>What the caller of a reading sees and says.</summary>
/// <param name="SerialNumber">The pad that is meant; empty: the one at that corner.</param>
/// <param name="Number">Of the reading, from 1; absent: whichever comes next.</param>
/// <param name="SaidTurned">The crew says that the pad was turned although it reads the same.</param>
internal sealed record InclinometerZeroStep(string SerialNumber = "", int? Number = null, bool SaidTurned = false);
