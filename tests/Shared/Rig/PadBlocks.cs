using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;

namespace Shared.Rig;

/// <summary>The [[pads]] blocks of a bay file for the pads of a simulator, whatever they speak.</summary>
internal static class PadBlocks
{
    private const string Numbers = @"load (?<load>-?\d+\.\d+) kg( pitch (?<pitch>-?\d+\.\d+) roll (?<roll>-?\d+\.\d+))? temp (?<temperature>-?\d+\.\d+)";

    /// <summary>The block of one pad.</summary>
    /// <param name="ready">What the simulator said when it was ready.</param>
    /// <param name="corner">Which pad.</param>
    /// <param name="isChecked">Whether the checksum of a text line is looked at.</param>
    public static string Of(JsonNode ready, string corner, bool isChecked = true)
    {
        var speaks = ready["speak"]![corner]!.GetValue<string>();
        var text = new StringBuilder($"""
            [[pads]]
            corner = "{corner}"
            link = "{ready["ports"]![corner]}"
            serial_number = "{ready["serials"]![corner]}"
            span_uncertainty_percent = 0.05

            """);
        text.AppendLine(speaks switch
        {
            "modbus" => Modbus(ready, corner),
            "text" => Text(isChecked),
            _ => string.Create(CultureInfo.InvariantCulture, $"kg_per_count = {ready["kg_per_count"]![corner]}"),
        });
        if (ready["slaves"]![$"{corner} tilt"] is { } slave)
            text.AppendLine(Tilt(ready, slave));
        return text.ToString();
    }

    private static string Modbus(JsonNode ready, string corner)
    {
        var text = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"""
            protocol = "modbus-rtu"
            slave = {ready["slaves"]![corner]}
            poll_hz = 20
            reply_timeout_ms = 150
            capacity_kg = 600
            kg_per_count = {ready["kg_per_count"]![corner]}

            """));
        for (var cell = 0; cell < 4; cell++)
            text.Append($"[[pads.registers]]\nmeans = \"load\"\ncell = {cell + 1}\nat = {2 * cell}\ntype = \"s32\"\n");
        // One after the other without a hole: one question reads them all.
        return text.Append("""
            [[pads.registers]]
            means = "pitch"
            at = 8
            type = "s16"
            scale = 0.001
            absent = -32768
            [[pads.registers]]
            means = "roll"
            at = 9
            type = "s16"
            scale = 0.001
            absent = -32768
            [[pads.registers]]
            means = "temperature"
            at = 10
            type = "s16"
            scale = 0.01
            [[pads.registers]]
            means = "status"
            at = 11
            type = "u16"
            bits = "8 excitation, 9 converter, 10 tilt"
            """).ToString();
    }

    private static string Text(bool isChecked) => $"""
        protocol = "text-lines"
        unit = "kg"
        capacity_kg = 600
        pattern = '{Numbers}\*{(isChecked ? "(?<check>[0-9A-F]{2})" : "[0-9A-F]{2}")}'
        checksum = "{(isChecked ? "xor" : "none")}"
        """;

    private static string Tilt(JsonNode ready, JsonNode slave) => $"""
        [pads.tilt]
        link = "{ready["bus"]}"
        protocol = "modbus-rtu"
        slave = {slave}
        poll_hz = 10
        reply_timeout_ms = 150
        [[pads.tilt.registers]]
        means = "pitch"
        at = 0
        type = "s16"
        scale = 0.001
        absent = -32768
        [[pads.tilt.registers]]
        means = "roll"
        at = 1
        type = "s16"
        scale = 0.001
        absent = -32768
        """;
}
