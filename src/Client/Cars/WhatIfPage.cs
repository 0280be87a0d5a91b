using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Questions;

namespace ScaleLink.Client.Cars;

/// <summary>Answers of statics as lines.</summary>
internal static class WhatIfPage
{
    public static IEnumerable<string> Lines(WhatIfAnswers a, Glyphs glyphs)
    {
        foreach (var line in Loads("Now", a.Now, glyphs))
            yield return line;
        yield return $"Centre of gravity {Show(a.CentreOfGravity.BehindFrontAxleMm, glyphs)} mm behind the front axle, {Show(a.CentreOfGravity.LeftOfCentreMm, glyphs)} mm left of the centreline";
        foreach (var line in a.Then is { } then ? Loads("Then", then.Loads, glyphs).Append($"  ride heights by the turns: {Four(then.HeightChangesMm, "+0.0;-0.0;0.0")} mm") : [])
            yield return line;
        foreach (var line in Plan(a, glyphs))
            yield return line;
        yield return "What perches can be asked for, one aim at a time:";
        foreach (var t in a.Trades)
            yield return TradeLine.Of(WhatIfJson.Aim(t.Goal).Replace('_', ' '), t.CrossWeightPercent, t.FrontLeftRightDifferenceKg, t.RearLeftRightDifferenceKg, t.LeftSideWeightGapPercent);
        if (a.LacksPlaces)
            yield return "Ballast: the car file names no place for any. Give ballast places in it, with what they take.";
        foreach (var m in a.ForFrontWeight.Concat(a.ForLeftSideWeight).Take(6))
            yield return TradeLine.Ballast(m.MassKg, m.From, m.To, m.SharePercent, m.Reaches);
        foreach (var line in RaceTable.Lines([.. a.Cases.Select(c => Row(c, glyphs))]))
            yield return line;
        if (a.Class is { } c)
            yield return RaceTable.Standing(c.Lightest, Show(c.LightestKg, glyphs), c.MarginKg, c.MinimumKg, c.MissingKg, c.SpareKg);
        if (a.CgHeight is { } height)
            yield return $"Centre of gravity {Show(height.HeightMm, glyphs)} mm above the ground. {Weighing.Balance.Cautions.AxleLift}";
        if (a.Guesses.Count > 0)
            yield return $"Guessed values, none was stated: {string.Join(", ", a.Guesses)}.";
        foreach (var lean in a.LeansOn)
            yield return $"The answer leans on a guess, {lean.Name}: one standard uncertainty of it is {lean.CrossWeightPercent:0.000} % of cross weight and up to {lean.LargestLoadKg:0.00} kg at a wheel. It is in the uncertainty.";
        yield return Weighing.Balance.Cautions.NotForTrade;
    }

    private static IEnumerable<string> Plan(WhatIfAnswers a, Glyphs glyphs)
    {
        if (a.Plan is not { } plan)
            yield break;
        yield return plan.AlreadyThere ? "Plan: within tolerance, nothing to turn." : $"Plan: {glyphs.Say(plan.Words)}. Expected {Show(plan.Forecast.CrossWeightPercent, glyphs)} %, heights {Four(plan.Forecast.HeightChangesMm, "+0.0;-0.0;0.0")} mm";
        foreach (var finding in plan.Findings)
            yield return $"  {finding}";
        foreach (var other in plan.Alternatives)
            yield return $"  or: {glyphs.Say(other.Words)}";
        if (!plan.AlreadyThere)
            yield return $"  {Weighing.Balance.Cautions.Perches}";
    }

    private static RaceRow Row(RaceCase state, Glyphs glyphs) => new(
        RaceTable.Name(state.Fuel, state.Driver), Show(state.Loads.TotalKg, glyphs), Show(state.Loads.FrontWeightPercent, glyphs), Show(state.Loads.LeftSideWeightPercent, glyphs),
        Show(state.Loads.CrossWeightPercent, glyphs), goal => state.Trades.Single(t => t.Goal == goal).CrossWeightPercent);

    private static IEnumerable<string> Loads(string title, LoadSummary s, Glyphs glyphs)
    {
        yield return $"{title}: LF RF LR RR {Four(s.Loads, "0.0")} kg, total {Show(s.TotalKg, glyphs)} kg";
        yield return $"  cross weight (RF + LR) / total {Show(s.CrossWeightPercent, glyphs)} %, front weight {Show(s.FrontWeightPercent, glyphs)} %, left-side weight {Show(s.LeftSideWeightPercent, glyphs)} %";
    }

    private static string Four(Corners c, string format) => $"{c.LF.ToString(format)} {c.RF.ToString(format)} {c.LR.ToString(format)} {c.RR.ToString(format)}";

    private static string Show(Value value, Glyphs glyphs) => ValueText.Of(value, Unit.Percent).Bare(glyphs);
}
