using System.Text.Json.Nodes;

namespace ScaleLink.Weighing.Cars.Files;

/// <summary>Writes fuel, drivers and class of a car.</summary>
static class RaceText
{
    public static JsonObject? Fuel(FuelTank? tank)
    {
        if (tank is null)
            return null;
        var block = CarFileText.Of(tank.Place);
        block["kg_per_litre"] = CarFileText.Of(tank.KgPerLitre);
        block["weighed_litres"] = CarFileText.Of(tank.WeighedLitres);
        block["start_litres"] = CarFileText.Of(tank.StartLitres);
        block["finish_litres"] = CarFileText.Of(tank.FinishLitres);
        return block;
    }

    public static JsonObject Driver(Driver driver)
    {
        var block = CarFileText.Of(driver.Seat);
        block.Insert(0, "name", driver.Name);
        block["kg"] = CarFileText.Of(driver.MassKg);
        block["in_car"] = driver.IsInCar;
        return block;
    }

    public static JsonObject? Class(ClassRule? rule) => rule is null ? null : new()
    {
        ["kg"] = rule.MinimumKg,
        ["margin_kg"] = rule.MarginKg,
        ["with_driver"] = rule.WithDriver,
        ["fuel"] = RaceReader.Word(rule.Fuel),
    };
}
