namespace ScaleLink.Weighing.Statics;

/// <summary>What some turns of the perches are expected to change.</summary>
/// <param name="Loads">Change of load, kg.</param>
/// <param name="LoadCovariance">Its covariance, kg²: uncertainty about the car only, not about reading or settling.</param>
/// <param name="Heights">Change of the body's height above the pads, mm.</param>
/// <param name="HeightCovariance">Its covariance, mm².</param>
readonly record struct TurnForecast(Corners Loads, CornerMatrix LoadCovariance, Corners Heights, CornerMatrix HeightCovariance);
