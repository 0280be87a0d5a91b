using System.Text.Json.Nodes;
using CarOnPads.Bench;
using CarOnPads.Pads;
using CarOnPads.Physics;

namespace CarOnPads.Control;

/// <summary>What a test or a demo crew may ask, and a real one may not.</summary>
static class AskingCommands
{
    public static IEnumerable<Command> All =>
    [
        new("truth", "The static loads that the pads come to carry, and the loads at this instant.",
            """{"do":"truth"}""", _ => Truth),
        new("state", "Everything that is set, and what is wrong at present.",
            """{"do":"state"}""", _ => State),
        new("help", "All commands with an example of each.",
            """{"do":"help"}""", _ => Help),
        new("quit", "End the program.",
            """{"do":"quit"}""", _ => (bay, _) => bay.Quit()),
    ];

    static void Truth(Bay bay, JsonObject reply)
    {
        var rest = StaticTruth.Of(bay.Rig);
        var loads = bay.OnPads(rest);
        reply["loads_kg"] = Corners(loads, 1e-4);
        reply["total_kg"] = Rounded(loads.Sum, 1e-4);
        reply["cross_weight_pct"] = CrossWeight(rest.Load);
        reply["now_kg"] = Corners(bay.Loads, 1e-4);
        reply["now_cross_weight_pct"] = CrossWeight(bay.Rig.Motion.Load);
        reply["still"] = !bay.Rig.Busy && bay.Rig.Motion.Speed < 1e-4;
        reply["ride_height_mm"] = Corners(RideHeights(bay.Rig.Chassis, rest), 1e-3);
    }

    static void State(Bay bay, JsonObject reply)
    {
        var rig = bay.Rig;
        reply["busy"] = rig.Busy;
        reply["driver"] = rig.DriverAboard;
        reply["bars"] = new JsonObject { ["front"] = rig.Around.FrontBar, ["rear"] = rig.Around.RearBar };
        reply["turns"] = Corners(rig.Turns, 1e-6);
        reply["jacks_mm"] = Corners(rig.Around.Jack.Times(1e3), 1e-3);
        reply["imperfections"] = new JsonArray([.. bay.Imperfections.On.Select(name => JsonValue.Create(name))]);
        var pads = new JsonObject();
        foreach (var wheel in Enum.GetValues<Wheel>())
            pads[wheel.ToString()] = PadState(bay, wheel);
        reply["pads"] = pads;
    }

    static JsonObject PadState(Bay bay, Wheel wheel)
    {
        var (pad, port) = (bay.Pad(wheel), bay.Port(wheel));
        return new JsonObject
        {
            ["port"] = port.Address,
            ["plugged"] = port.Plugged,
            ["lost_bytes"] = port.LostBytes,
            ["speaks"] = Speaking.NameOf(pad.Speech),
            ["serial"] = pad.SerialNumber,
            ["boot_id"] = pad.BootId,
            ["rate_hz"] = pad.Hertz,
            ["sequence"] = pad.Sequence,
            ["mass_kg"] = bay.MassOn(wheel),
            ["height_mm"] = Rounded(1e3 * bay.Rig.Feet[wheel], 1e-3),
            ["pitch_deg"] = pad.PitchDegrees,
            ["roll_deg"] = pad.RollDegrees,
            ["turned"] = pad.IsTurned,
            ["tilt_zero_deg"] = new JsonArray(pad.TiltZero.Pitch, pad.TiltZero.Roll),
            ["celsius"] = Rounded(pad.TemperatureCelsius, 1e-3),
            ["blink_s"] = pad.Blinking,
            ["faults"] = new JsonArray([.. pad.Faults.Present(bay.Time).Select(name => JsonValue.Create(name))]),
        };
    }

    static void Help(Bay bay, JsonObject reply)
    {
        var commands = new JsonArray();
        foreach (var command in CommandTable.All)
            commands.Add(new JsonObject { ["do"] = command.Name, ["purpose"] = command.Purpose, ["example"] = JsonNode.Parse(command.Example) });
        reply["commands"] = commands;
    }

    /// <summary>(RF + LR) / total of the car, percent; absent when the car carries nothing to the pads.</summary>
    static JsonNode? CrossWeight(in Four car) =>
        car.Sum > 0 ? Rounded(100 * (car[Wheel.RF] + car[Wheel.LR]) / car.Sum, 1e-4) : null;

    static Four RideHeights(Chassis chassis, in Motion rest)
    {
        var heights = new Four();
        for (var i = 0; i < 4; i++)
            heights[i] = 1e3 * rest.BodyAt(chassis.Stations[i].X, chassis.Stations[i].Y);
        return heights;
    }

    static JsonObject Corners(in Four four, double step)
    {
        var corners = new JsonObject();
        foreach (var wheel in Enum.GetValues<Wheel>())
            corners[wheel.ToString()] = Rounded(four[wheel], step);
        return corners;
    }

    static double Rounded(double value, double step) => Math.Round(value, (int)Math.Round(-Math.Log10(step)));
}
