namespace ScaleLink.Weighing.WorkSessions.Planning;

/// <summary>How far a car stands from its targets.</summary>
/// <param name="CrossWeightPercent">Percent, above the target positive.</param>
/// <param name="MeanRideHeightMm">mm too high.</param>
/// <param name="RakeMm">Rear minus front, mm too much.</param>
/// <param name="LeftRightDifferenceMm">Left minus right, mm too much.</param>
readonly record struct PlanMisses(double CrossWeightPercent, double MeanRideHeightMm, double RakeMm, double LeftRightDifferenceMm);
