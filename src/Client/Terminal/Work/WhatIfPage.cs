using ScaleLink.Client.Json;
using ScaleLink.Client.Readings;
using ScaleLink.Weighing;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Questions;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Client.Terminal;

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
            yield return $"  {WhatIfJson.Aim(t.Goal).Replace('_', ' '),-18} cross weight {t.CrossWeightPercent:0.00} %, LF-RF {t.FrontSideDifferenceKg:+0.0;-0.0;0.0} kg, LR-RR {t.RearSideDifferenceKg:+0.0;-0.0;0.0} kg, left shares {t.LeftShareGapPercent:+0.0;-0.0;0.0} % apart";
        foreach (var m in a.ForFrontShare.Concat(a.ForLeftShare).Take(6))
            yield return $"  ballast: {m.MassKg:0.0} kg {(m.From is null ? "" : $"out of {PeerText.Clean(m.From, 30)} ")}{(m.To is null ? "" : $"into {PeerText.Clean(m.To, 30)} ")}gives {m.SharePercent:0.00} %{(m.Reaches ? "" : ", and no more")}";
        if (a.Class is { } c)
            yield return $"Lightest state ({PeerText.Clean(c.Lightest, 30)}): {Show(c.LightestKg, glyphs)} kg, {c.MarginKg:+0.0;-0.0;0.0} kg over the minimum; {(c.MissingKg > 0 ? $"{c.MissingKg:0.0} kg missing" : $"{c.SpareKg:0.0} kg to spare")}. The scrutineer's scales decide.";
        if (a.CgHeight is { } height)
            yield return $"Centre of gravity {Show(height.HeightMm, glyphs)} mm above the ground. {Weighing.Balance.Cautions.AxleLift}";
        if (a.Guesses.Count > 0)
            yield return $"Guessed, because nobody stated them: {string.Join(", ", a.Guesses)}.";
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

    private static IEnumerable<string> Loads(string title, LoadSummary s, Glyphs glyphs)
    {
        yield return $"{title}: LF RF LR RR {Four(s.Loads, "0.0")} kg, total {Show(s.TotalKg, glyphs)} kg";
        yield return $"  cross weight (RF + LR) / total {Show(s.CrossWeightPercent, glyphs)} %, front share {Show(s.FrontSharePercent, glyphs)} %, left share {Show(s.LeftSharePercent, glyphs)} %";
    }

    private static string Four(Corners c, string format) => $"{c.LF.ToString(format)} {c.RF.ToString(format)} {c.LR.ToString(format)} {c.RR.ToString(format)}";

    private static string Show(Quantity q, Glyphs glyphs)
    {
        var wire = new Wire.Quantity { Value = q.Value, StandardUncertainty = q.StandardUncertainty };
        if (q.DegreesOfFreedom is { } few)
            wire.DegreesOfFreedom = few;
        return Figure.Percent(wire).Full(glyphs);
    }
}
