using System.Text.Json;
using System.Text.Json.Nodes;
using ScaleLink.Client.Json;
using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Questions;
using ScaleLink.Weighing.WorkSessions.Planning;

namespace ScaleLink.Client.Cars;

/// <summary>What <c>whatif --json</c> prints. What was not asked is left out.</summary>
internal static class WhatIfJson
{
    public static JsonObject Of(WhatIfAnswers a)
    {
        var json = new JsonObject
        {
            ["now"] = Loads(a.Now),
            ["cg_behind_front_axle_mm"] = Of(a.CentreOfGravity.BehindFrontAxleMm),
            ["cg_left_of_centre_mm"] = Of(a.CentreOfGravity.LeftOfCentreMm),
            ["loads_kg_per_turn"] = CarJson.Matrix(a.LoadsPerTurn),
            ["balance"] = new JsonArray([.. a.Trades.Select(Trade)]),
        };
        if (a.Then is { } then)
            (json["then"], json["height_changes_mm"]) = (Loads(then.Loads), CarJson.Four(then.HeightChangesMm));
        if (a.Plan is { } plan)
            json["plan"] = Plan(plan);
        if (a.ForFrontWeight.Count + a.ForLeftSideWeight.Count > 0)
            json["ballast"] = new JsonArray([.. a.ForFrontWeight.Select(m => Ballast(m, "front_weight")), .. a.ForLeftSideWeight.Select(m => Ballast(m, "left_side_weight"))]);
        if (a.Cases.Count > 0)
            json["cases"] = new JsonArray([.. a.Cases.Select(Case)]);
        if (a.Class is { } c)
            json["class"] = new JsonObject { ["minimum_kg"] = c.MinimumKg, ["lightest"] = c.Lightest, ["lightest_kg"] = Of(c.LightestKg), ["margin_kg"] = c.MarginKg, ["guard_kg"] = c.GuardKg, ["missing_kg"] = c.MissingKg, ["spare_kg"] = c.SpareKg };
        if (a.CgHeight is { } height)
            json["cg_height_mm"] = Of(height.HeightMm);
        if (a.Guesses.Count > 0)
            json["guesses"] = new JsonArray([.. a.Guesses.Select(g => (JsonNode)g)]);
        if (a.LeansOn.Count > 0)
            json["leans_on"] = new JsonArray([.. a.LeansOn.Select(l => new JsonObject { ["name"] = l.Name, ["cross_weight_percent"] = l.CrossWeightPercent, ["load_kg"] = l.LargestLoadKg })]);
        return json;
    }

    private static JsonObject Loads(LoadSummary s) => new()
    {
        ["loads_kg"] = CarJson.Four(s.Loads),
        ["total_kg"] = Of(s.TotalKg),
        ["cross_weight_percent"] = Of(s.CrossWeightPercent),
        ["front_weight_percent"] = Of(s.FrontWeightPercent),
        ["left_side_weight_percent"] = Of(s.LeftSideWeightPercent),
        ["front_left_right_difference_kg"] = Of(s.FrontLeftRightDifferenceKg),
        ["rear_left_right_difference_kg"] = Of(s.RearLeftRightDifferenceKg),
    };

    private static JsonObject Plan(PerchPlan plan) => new()
    {
        ["turns"] = CarJson.Four(plan.Turns),
        ["words"] = plan.Words,
        ["already_there"] = plan.AlreadyThere,
        ["reaches"] = plan.Reaches,
        ["expected_cross_weight_percent"] = Of(plan.Forecast.CrossWeightPercent),
        ["expected_loads_kg"] = CarJson.Four(plan.Forecast.Loads.Loads),
        ["height_changes_mm"] = CarJson.Four(plan.Forecast.HeightChangesMm),
        ["findings"] = new JsonArray([.. plan.Findings.Select(CarJson.Diagnostic)]),
        ["alternatives"] = new JsonArray([.. plan.Alternatives.Select(x => (JsonNode)x.Words.ToString())]),
    };

    private static JsonObject Trade(BalanceTrade t) => new()
    {
        ["aim"] = Aim(t.Goal), ["loads_kg"] = CarJson.Four(t.LoadsKg), ["cross_weight_percent"] = t.CrossWeightPercent,
        ["front_left_right_difference_kg"] = t.FrontLeftRightDifferenceKg, ["rear_left_right_difference_kg"] = t.RearLeftRightDifferenceKg, ["left_side_weight_gap_percent"] = t.LeftSideWeightGapPercent,
    };

    private static JsonObject Case(RaceCase state)
    {
        var json = Loads(state.Loads);
        json.Insert(0, "fuel", JsonNamingPolicy.SnakeCaseLower.ConvertName($"{state.Fuel}"));
        json.Insert(1, "driver", state.Driver);
        json["balance"] = new JsonArray([.. state.Trades.Select(Trade)]);
        return json;
    }

    public static string Aim(BalanceGoal goal) => goal switch
    {
        BalanceGoal.CrossWeight => "cross_weight",
        BalanceGoal.EqualFrontLoads => "equal_front_loads",
        BalanceGoal.EqualRearLoads => "equal_rear_loads",
        _ => "equal_left_side_weights",
    };

    private static JsonObject Ballast(BallastMove m, string share) => new()
    {
        ["share"] = share, ["from"] = m.From, ["to"] = m.To, ["kg"] = m.MassKg, ["reaches"] = m.Reaches, ["share_percent"] = m.SharePercent, ["total_change_kg"] = m.TotalChangeKg,
    };

    private static JsonObject Of(Value value)
    {
        var json = new JsonObject { ["estimate"] = value.Estimate, ["standard_uncertainty"] = value.StandardUncertainty, ["expanded_uncertainty"] = value.Expanded };
        if (value.DegreesOfFreedom is { } few)
            json["degrees_of_freedom"] = few;
        return json;
    }
}
