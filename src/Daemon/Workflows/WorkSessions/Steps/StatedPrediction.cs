using ScaleLink.Measure;
using ScaleLink.Weighing.Statics;
using ScaleLink.Weighing.WorkSessions.Planning;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Steps;

/// <summary>What some turns should do, as it was said before anybody read the pads again.</summary>
/// <param name="Turns">Turns it is for, up positive.</param>
/// <param name="CrossWeightPercent">On the next reading.</param>
/// <param name="LoadsKg">kg.</param>
/// <param name="LoadCovariance">kg².</param>
/// <param name="HeightChangesMm">Change of ride height where it is measured, mm.</param>
/// <param name="HeightUncertaintiesMm">One standard uncertainty of each, mm.</param>
internal sealed record StatedPrediction(
    Corners Turns, Value CrossWeightPercent, Corners LoadsKg, CornerMatrix LoadCovariance, Corners HeightChangesMm, Corners HeightUncertaintiesMm)
{
    /// <summary>From a forecast.</summary>
    public static StatedPrediction Of(Corners turns, PlanForecast forecast) => new(
        turns, forecast.CrossWeightPercent, forecast.Loads.Loads, forecast.Loads.Covariance, forecast.HeightChangesMm, forecast.HeightUncertaintiesMm);
}
