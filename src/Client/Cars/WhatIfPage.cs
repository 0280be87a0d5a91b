using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Questions;
using static ScaleLink.Measure.Sentences.Arguments;

namespace ScaleLink.Client.Cars;

/// <summary>Answers of statics as lines.</summary>
internal static class WhatIfPage
{
    public static IEnumerable<string> Lines(WhatIfAnswers a, Glyphs glyphs)
    {
        foreach (var line in Loads("Now", a.Now, glyphs))
            yield return line;
        yield return $"Centre of gravity {Length(a.CentreOfGravity.BehindFrontAxleMm, glyphs)} behind the front axle, {Length(a.CentreOfGravity.LeftOfCentreMm, glyphs)} left of the centreline";
        foreach (var line in a.Then is { } then ? Loads("Then", then.Loads, glyphs).Append($"  ride heights by the turns: {Heights(then.HeightChangesMm, glyphs)}") : [])
            yield return line;
        foreach (var line in Plan(a, glyphs))
            yield return line;
        yield return "What perches can be asked for, one aim at a time:";
        foreach (var t in a.Trades)
            yield return TradeLine.Of(glyphs, WhatIfJson.Aim(t.Goal).Replace('_', ' '), t.CrossWeightPercent, t.FrontLeftRightDifferenceKg, t.RearLeftRightDifferenceKg, t.LeftSideWeightGapPercent);
        if (a.LacksPlaces)
            yield return "Ballast: the car file names no place for any. Give ballast places in it, with what they take.";
        foreach (var m in a.ForFrontWeight.Concat(a.ForLeftSideWeight).Take(6))
            yield return TradeLine.Ballast(glyphs, m.MassKg, m.From, m.To, m.SharePercent, m.Reaches);
        foreach (var line in RaceTable.Lines(glyphs, [.. a.Cases.Select(c => Row(c, glyphs))]))
            yield return line;
        if (a.Class is { } c)
            yield return RaceTable.Standing(glyphs, c.Lightest, Mass(c.LightestKg, glyphs), c.MarginKg, c.MinimumKg, c.MissingKg, c.SpareKg);
        if (a.CgHeight is { } height)
            yield return $"Centre of gravity {Length(height.HeightMm, glyphs)} above the ground. {Weighing.Balance.Cautions.AxleLift}";
        if (a.Guesses.Count > 0)
            yield return $"Guessed values, none was stated: {string.Join(", ", a.Guesses)}.";
        foreach (var lean in a.LeansOn)
            yield return glyphs.Line($"The answer leans on a guess, {lean.Name}: one standard uncertainty of it is {lean.CrossWeightPercent:0.000} % of cross weight and up to {Kg(lean.LargestLoadKg):0.00} at a wheel. It is in the uncertainty.");
        yield return Weighing.Balance.Cautions.NotForTrade;
    }

    private static IEnumerable<string> Plan(WhatIfAnswers a, Glyphs glyphs)
    {
        if (a.Plan is not { } plan)
            yield break;
        yield return plan.AlreadyThere ? "Plan: within tolerance, nothing to turn." : $"Plan: {glyphs.Tell(plan.Words)}. Expected {Show(plan.Forecast.CrossWeightPercent, glyphs)} %, heights {Heights(plan.Forecast.HeightChangesMm, glyphs)}";
        foreach (var finding in plan.Findings)
            yield return $"  {glyphs.Tell(finding)}";
        foreach (var other in plan.Alternatives)
            yield return $"  or: {glyphs.Tell(other.Words)}";
        if (!plan.AlreadyThere)
            yield return $"  {Weighing.Balance.Cautions.Perches}";
    }

    private static RaceRow Row(RaceCase state, Glyphs glyphs) => new(
        RaceTable.Name(state.Fuel, state.Driver), Mass(state.Loads.TotalKg, glyphs), Show(state.Loads.FrontWeightPercent, glyphs), Show(state.Loads.LeftSideWeightPercent, glyphs),
        Show(state.Loads.CrossWeightPercent, glyphs), goal => state.Trades.Single(t => t.Goal == goal).CrossWeightPercent);

    private static IEnumerable<string> Loads(string title, LoadSummary s, Glyphs glyphs)
    {
        yield return $"{title}: LF RF LR RR {Four(s.Loads, l => glyphs.Kg(l, "0.0"))} {glyphs.MassSign()}, total {Mass(s.TotalKg, glyphs)} {glyphs.MassSign()}";
        yield return $"  cross weight (RF + LR) / total {Show(s.CrossWeightPercent, glyphs)} %, front weight {Show(s.FrontWeightPercent, glyphs)} %, left-side weight {Show(s.LeftSideWeightPercent, glyphs)} %";
    }

    private static string Four(Corners c, Func<double, string> show) => $"{show(c.LF)} {show(c.RF)} {show(c.LR)} {show(c.RR)}";

    private static string Heights(Corners mm, Glyphs glyphs) => $"{Four(mm, h => glyphs.Line($"{BareMm(h):+0.0}"))} {glyphs.LengthSign()}";

    private static string Mass(Value value, Glyphs glyphs) => ValueText.Of(value, glyphs.Units.Mass).Bare(glyphs);

    private static string Length(Value value, Glyphs glyphs) => $"{ValueText.Of(value, glyphs.Units.Length).Bare(glyphs)} {glyphs.LengthSign()}";

    private static string Show(Value value, Glyphs glyphs) => ValueText.Of(value, Unit.Percent).Bare(glyphs);
}
