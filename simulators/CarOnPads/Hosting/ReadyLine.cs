using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using CarOnPads.Bench;
using CarOnPads.Pads;
using CarOnPads.Physics;
using CarOnPads.Ports;
using CarOnPads.Replay;

namespace CarOnPads.Hosting;

/// <summary>The one line on standard output that tells a parent process where everything is.</summary>
static class ReadyLine
{
    static readonly JsonSerializerOptions s_json = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Of(Bay bay, string control, IReadOnlyDictionary<string, LineSetting> lines) => new JsonObject
    {
        ["ready"] = true,
        ["control"] = control,
        ["ports"] = PerPad(wheel => bay.Port(wheel).Address),
        ["kg_per_count"] = PerPad(wheel => bay.Pad(wheel).KgPerCount),
        ["speak"] = PerPad(wheel => Speaking.NameOf(bay.Pad(wheel).Speech)),
        ["bus"] = bay.BusPort?.Address,
        ["slaves"] = Slaves(bay),
        ["lines"] = new JsonObject(lines.Select(l => KeyValuePair.Create<string, JsonNode?>(l.Key, l.Value.ToString()))),
        ["serials"] = PerPad(wheel => bay.Pad(wheel).SerialNumber),
        ["car"] = bay.Options.Car.Name,
        ["seed"] = bay.Options.Seed,
        ["rate_hz"] = bay.Options.Hertz,
        ["gravity"] = bay.Options.Gravity,
        ["imperfections"] = new JsonArray([.. bay.Imperfections.On.Select(name => JsonValue.Create(name))]),
    }.ToJsonString(s_json);

    public static string Of(IReadOnlyList<NamedRecording> recordings, Player player)
    {
        var ports = new JsonObject();
        foreach (var (recording, port) in recordings.Zip(player.Ports))
            ports[recording.Name] = port.Address;
        return new JsonObject { ["ready"] = true, ["ports"] = ports }.ToJsonString(s_json);
    }

    static JsonObject Slaves(Bay bay)
    {
        var slaves = new JsonObject();
        foreach (var wheel in Enum.GetValues<Wheel>())
        {
            if (bay.Pad(wheel).Speech == Speech.Modbus)
                slaves[wheel.ToString()] = BusSlaves.PadAddress(wheel, bay.Options);
            if (bay.Options.Speaking.TiltOnBus)
                slaves[$"{wheel} tilt"] = BusSlaves.TiltAddress(wheel);
        }

        return slaves;
    }

    static JsonObject PerPad<T>(Func<Wheel, T> value)
    {
        var all = new JsonObject();
        foreach (var wheel in Enum.GetValues<Wheel>())
            all[wheel.ToString()] = JsonValue.Create(value(wheel));
        return all;
    }
}
