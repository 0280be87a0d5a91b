using static ScaleLink.Weighing.SetupSheets.SheetScope;
using static ScaleLink.Weighing.SetupSheets.SheetUnit;

namespace ScaleLink.Weighing.SetupSheets;

/// <summary>
/// Everything that a setup sheet can hold, in the order in which it is shown. The ranges are wide enough for anything on four wheels and narrow
/// enough to catch a number in another unit; common practice, no published source. A key is written to the ledger and never renamed.
/// </summary>
static class SheetFields
{
    public static IReadOnlyList<SheetField> All { get; } =
    [
        new("springs", "rate", "Spring rate", EachCorner, Rate, 5, 1000),
        new("springs", "free_length", "Spring free length", EachCorner, Length, 20, 800),
        new("springs", "preload", "Spring preload", EachCorner, Length, -50, 200) { MovesWithPerches = true },
        new("springs", "packers", "Packers", EachCorner, Length, 0, 100),
        new("springs", "perch_turns", "Perch, turns up from its mark", EachCorner, Turns, -100, 100),
        new("springs", "helper_rate", "Helper spring rate", EachCorner, Rate, 0.2, 500),
        new("springs", "helper_free_length", "Helper spring free length", EachCorner, Length, 5, 400),
        new("springs", "helper_block_length", "Helper spring length at block", EachCorner, Length, 1, 200),
        new("bars", "rate", "Bar rate at the wheels", EachAxle, Rate, 0, 1000),
        new("bars", "step", "Bar step, from the softest", EachAxle, Steps, 0, 50),
        new("bars", "fitted", "Bar fitted", EachAxle, null, 0, 0),
        new("dampers", "fitted", "Damper fitted", EachAxle, null, 0, 0),
        new("dampers", "bump_low_speed", "Bump low speed, from closed", EachCorner, Clicks, 0, 100),
        new("dampers", "bump_high_speed", "Bump high speed, from closed", EachCorner, Clicks, 0, 100),
        new("dampers", "rebound_low_speed", "Rebound low speed, from closed", EachCorner, Clicks, 0, 100),
        new("dampers", "rebound_high_speed", "Rebound high speed, from closed", EachCorner, Clicks, 0, 100),
        new("dampers", "gas_pressure", "Damper gas pressure", EachCorner, Pressure, 0, 60),
        new("tyres", "set", "Tyre set", WholeCar, null, 0, 0),
        new("tyres", "size", "Tyre size", EachAxle, null, 0, 0),
        new("tyres", "compound", "Tyre compound", EachAxle, null, 0, 0),
        new("tyres", "circumference", "Tyre circumference", EachCorner, Length, 800, 4000),
        new("tyres", "pressure_cold", "Pressure cold", EachCorner, Pressure, 0.2, 6),
        new("tyres", "pressure_hot", "Pressure hot", EachCorner, Pressure, 0.2, 6),
        new("tyres", "temperature_cold", "Temperature at the cold pressure", WholeCar, Temperature, -30, 90),
        new("tyres", "temperature_hot", "Temperature at the hot pressure", EachCorner, Temperature, -30, 200),
        new("alignment", "camber", "Camber, leaning out positive", EachCorner, Angle, -15, 15),
        new("alignment", "toe", "Toe, in positive", EachCorner, Angle, -5, 5),
        new("alignment", "toe_at_rim", "Toe at the rim, in positive", EachCorner, Length, -30, 30),
        new("alignment", "caster", "Caster", EachCorner, Angle, -5, 20),
        new("heights", "ride_height", "Ride height at the mark", EachCorner, Length, 0, 1500) { MovesWithPerches = true },
        new("heights", "mark", "Where ride height is measured", EachCorner, null, 0, 0),
        new("heights", "rake", "Rake, rear above front", WholeCar, Length, -300, 300) { MovesWithPerches = true },
        new("clearances", "droop", "Droop travel at the wheel", EachCorner, Length, 0, 400) { MovesWithPerches = true },
        new("clearances", "bump", "Bump travel to the rubber, at the wheel", EachCorner, Length, 0, 400) { MovesWithPerches = true },
        new("clearances", "bump_rubber", "Bump rubber fitted", EachCorner, null, 0, 0),
        new("brakes", "front_bias", "Brake bias, front", WholeCar, Share, 0, 100),
        new("brakes", "pads", "Brake pads", EachAxle, null, 0, 0),
        new("brakes", "discs", "Brake discs", EachAxle, null, 0, 0),
        new("brakes", "ducts", "Brake ducts", EachAxle, null, 0, 0),
        new("wings", "angle", "Wing angle", EachAxle, Angle, -30, 90),
        new("wings", "flap", "Wing flap", EachAxle, null, 0, 0),
        new("wings", "lip", "Trailing edge lip", EachAxle, Length, 0, 100),
        new("wings", "height", "Wing height above the ground", EachAxle, Length, 0, 2000),
        new("fuel", "fill", "Fuel in the tank", WholeCar, Volume, 0, 1000),
        new("ballast", "fitted", "Ballast", Named, Mass, 0, 500),
        new("seat", "driver_mass", "Driver with suit and helmet", WholeCar, Mass, 20, 250),
        new("seat", "behind_front_axle", "Seat behind the front axle", WholeCar, Length, -3000, 6000),
        new("seat", "seat", "Seat and belts", WholeCar, null, 0, 0),
        new("steering", "rack", "Rack and ratio", WholeCar, null, 0, 0),
        new("driveline", "differential", "Differential", WholeCar, null, 0, 0),
        new("driveline", "ratios", "Gear ratios", WholeCar, null, 0, 0),
        new("remarks", "text", "Remarks", WholeCar, null, 0, 0),
    ];

    static readonly Dictionary<string, int> Orders = All.Select((field, order) => (field.Key, order)).ToDictionary(f => f.Key, f => f.order, StringComparer.Ordinal);

    /// <summary>The field of that key; null when there is none.</summary>
    public static SheetField? Find(string key) => Orders.TryGetValue(key, out var order) ? All[order] : null;

    /// <summary>Its place in the sheet; behind all others for a key that this version does not know.</summary>
    public static int Order(string key) => Orders.GetValueOrDefault(key, All.Count);
}
