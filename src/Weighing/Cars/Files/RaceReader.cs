using ScaleLink.Weighing.Documents;

namespace ScaleLink.Weighing.Cars.Files;

/// <summary>Reads fuel, drivers and class out of a car's document. What is missing is noted; then no car comes of it.</summary>
static class RaceReader
{
    static readonly Dictionary<string, FuelLevel> Levels = new()
    {
        ["as_weighed"] = FuelLevel.AsWeighed, ["start"] = FuelLevel.Start, ["finish"] = FuelLevel.Finish, ["empty"] = FuelLevel.Empty,
    };

    public static FuelTank? Fuel(JsonBlock? block)
    {
        if (block is null)
            return null;
        var tank = new FuelTank(block.Place(), block.Stated("kg_per_litre") ?? FuelTank.Petrol,
            Needed(block, "weighed_litres"), Needed(block, "start_litres"), Needed(block, "finish_litres"));
        block.Finish();
        return tank;
    }

    public static IReadOnlyList<Driver> Drivers(JsonBlock root) =>
    [
        .. root.List("drivers").Select(block =>
        {
            if (!block.Has("name"))
                block.Missing("name", "\"...\"");
            var driver = new Driver(block.Name("name") ?? "", Needed(block, "kg"), block.Place(), block.Flag("in_car") ?? false);
            block.Finish();
            return driver;
        }),
    ];

    public static ClassRule? Class(JsonBlock? block)
    {
        if (block is null)
            return null;
        if (!block.Has("kg"))
            block.Missing("kg", "1010");
        if (!block.Has("with_driver"))
            block.Missing("with_driver", "true, or false");
        var fuel = FuelLevel.AsWeighed;
        if (block.Text("fuel") is { } name && !Levels.TryGetValue(name, out fuel))
            block.Note(CarCodes.WrongKind, "fuel", $"{block.At("fuel")} names no fuel.", $"Write one of {string.Join(", ", Levels.Keys.Select(k => $"\"{k}\""))}.");
        var rule = new ClassRule(block.Number("kg") ?? 0, block.Number("margin_kg") ?? 0, block.Flag("with_driver") ?? false, fuel);
        block.Finish();
        return rule;
    }

    /// <summary>The word of a level in the document.</summary>
    public static string Word(FuelLevel level) => Levels.Single(l => l.Value == level).Key;

    static Stated Needed(JsonBlock block, string key) => CarReader.Needed(block, key) ?? Stated.Exactly(0);
}
