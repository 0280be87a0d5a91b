using ScaleLink.Api.V1;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Calibration;

/// <summary>What a plan costs and brings, for people who are about to lift.</summary>
internal static class ForecastLines
{
    /// <summary>In one line.</summary>
    /// <param name="forecast">Of the plan.</param>
    /// <param name="left">Lifts and kg that are left; absent when nothing was lifted yet, or all is done.</param>
    /// <param name="glyphs">Of the terminal.</param>
    public static string Of(PlanForecast forecast, (uint Lifts, double Kg)? left, Glyphs glyphs)
    {
        var lift = left is { } rest && rest.Lifts < forecast.Lifts
            ? $"{rest.Lifts} of {forecast.Lifts} lifts left, {rest.Kg:0} of {forecast.LiftedKg:0} kg"
            : $"{forecast.Lifts} lifts, on and off, {forecast.LiftedKg:0} kg in all";
        var foreseen = forecast.Foreseen.LastOrDefault(f => f.LoadKg <= forecast.HighestKg) is { } at ? $"; foreseen {glyphs.PlusMinus}{at.ExpandedKg:0.00} kg (95 %) at {at.LoadKg:0.#} kg" : "";
        return $"Plan: {forecast.Steps} steps to {forecast.HighestKg:0.#} kg, {lift}{foreseen}";
    }
}
