using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Statics;
using ScaleLink.Weighing.WorkSessions.Planning;

namespace ScaleLink.Weighing.Questions;

/// <summary>How far an answer moves with a value that nobody stated, for one standard uncertainty of the guess; both are in the answer's uncertainty.</summary>
/// <param name="Name">Of the value, such as "roll axis height".</param>
/// <param name="CrossWeightPercent">Percent, either way.</param>
/// <param name="LargestLoadKg">At the wheel that moves most, kg either way.</param>
sealed record GuessLean(string Name, double CrossWeightPercent, double LargestLoadKg)
{
    // Below this nobody would measure the value for the answer's sake (common practice, no published source).
    const double LeastKg = 0.05, LeastPercent = 0.005;

    /// <summary>The guesses that show in the answer to a change, the largest first.</summary>
    public static IReadOnlyList<GuessLean> Of(WhatIf change, CarStatics statics, LoadSummary now)
    {
        var guesses = statics.Car.Guesses();
        var slope = Shares.Slope(Shares.CrossWeight, now.Loads);
        return
        [
            .. ModelUncertainty.Of(statics.Car).Where(u => guesses.Contains(u.Name))
                .Select(u => (u.Name, Half: u.PerStep / 2 * (change.Change(statics.WithUncertainty(u.Upper)) - change.Change(statics.WithUncertainty(u.Lower)))))
                .Select(lean => new GuessLean(lean.Name, Math.Abs(slope.Dot(lean.Half)), Largest(lean.Half)))
                .Where(lean => lean.LargestLoadKg >= LeastKg || lean.CrossWeightPercent >= LeastPercent)
                .OrderByDescending(lean => lean.LargestLoadKg),
        ];
    }

    static double Largest(Corners half) => Corners.All.ToArray().Max(c => Math.Abs(half[c]));
}
