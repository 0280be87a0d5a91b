using System.Text.Json.Nodes;
using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Cars.Files;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Client.Json;

/// <summary>JSON of the car commands that need no daemon.</summary>
internal static class CarJson
{
    public static JsonObject Check(CarFile file) => new()
    {
        ["good"] = file.Car is not null,
        ["name"] = file.Car?.Name,
        ["mistakes"] = new JsonArray([.. file.Mistakes.Select(Diagnostic)]),
        ["earlier_names"] = new JsonArray([.. file.EarlierNames.Select(Diagnostic)]),
        ["guesses"] = new JsonArray([.. (file.Car?.Guesses() ?? []).Select(g => (JsonNode)g)]),
    };

    public static JsonObject Effects(CarModel car, double totalKg)
    {
        var statics = new CarStatics(car, totalKg);
        return new() { ["name"] = car.Name, ["total_kg"] = totalKg, ["loads_kg_per_turn"] = Matrix(statics.LoadsPerTurn), ["heights_mm_per_turn"] = Matrix(statics.HeightsPerTurn) };
    }

    public static JsonObject Diagnostic(Diagnostic f)
    {
        var json = new JsonObject { ["code"] = f.Code.Text, ["message"] = f.Message.ToString(), ["remedy"] = f.Remedy.ToString() };
        if (f.Where.Length > 0)
            json["where"] = f.Where;
        if (f.Line is { } line)
            json["line"] = line;
        return json;
    }

    public static JsonObject Four(Corners c) => new() { ["LF"] = c.LF, ["RF"] = c.RF, ["LR"] = c.LR, ["RR"] = c.RR };

    /// <summary>By the perch that is turned, what happens at each corner.</summary>
    public static JsonObject Matrix(CornerMatrix m) => new(Corners.All.ToArray().Select(c => KeyValuePair.Create<string, JsonNode?>($"{c}", Four(m.Column(c)))));
}
