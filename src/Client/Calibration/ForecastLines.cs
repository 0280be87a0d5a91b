using ScaleLink.Api.V1;
using ScaleLink.Client.Runtime;
using static ScaleLink.Measure.Sentences.Arguments;
using Sentence = ScaleLink.Measure.Sentences.Sentence;

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
            ? (Sentence)$"{rest.Lifts} of {forecast.Lifts} lifts left, {BareKg(rest.Kg):0} of {Kg(forecast.LiftedKg):0}"
            : (Sentence)$"{forecast.Lifts} lifts, on and off, {Kg(forecast.LiftedKg):0} in all";
        var foreseen = forecast.Foreseen.LastOrDefault(f => f.LoadKg <= forecast.HighestKg) is { } at ? (Sentence)$"; foreseen {glyphs.PlusMinus}{Kg(at.ExpandedKg):0.00} (95 %) at {Kg(at.LoadKg):0.#}" : default;
        return glyphs.Line($"Plan: {forecast.Steps} steps to {Kg(forecast.HighestKg):0.#}, {lift}{foreseen}");
    }
}
