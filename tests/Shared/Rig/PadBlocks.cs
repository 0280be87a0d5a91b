using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;

namespace Shared.Rig;

/// <summary>The [[pads]] blocks of a bay file for the pads of a simulator, whatever they speak.</summary>
internal static class PadBlocks
{
    /// <summary>With it the stated times of faults are kept, and scenes are recorded.</summary>
    public const int RecordedReplyMs = 150;

    /// <summary>A busy machine may be late with an answer.</summary>
    public const int PatientReplyMs = 400;

    // Every test of a bay can be run on the serial library too: SCALELINK_READ_BY=library.
    private static readonly string s_readBy = Environment.GetEnvironmentVariable("SCALELINK_READ_BY") is { Length: > 0 } reader ? $"read_by = \"{reader}\"" : "";

    private const string Numbers = @"load (?<load>-?\d+\.\d+) kg( pitch (?<pitch>-?\d+\.\d+) roll (?<roll>-?\d+\.\d+))? temp (?<temperature>-?\d+\.\d+)";

    /// <summary>The block of one pad.</summary>
    /// <param name="ready">What the simulator said when it was ready.</param>
    /// <param name="corner">Which pad.</param>
    /// <param name="isChecked">Whether the checksum of a text line is looked at.</param>
    /// <param name="replyMs">How long a slave may take to answer.</param>
    public static string Of(JsonNode ready, string corner, bool isChecked = true, int replyMs = RecordedReplyMs)
    {
        var speaks = ready["speak"]![corner]!.GetValue<string>();
        var text = new StringBuilder($"""
            [[pads]]
            corner = "{corner}"
            link = "{ready["ports"]![corner]}"
            serial_number = "{ready["serials"]![corner]}"
            span_uncertainty_percent = 0.05
            {s_readBy}

            """);
        text.AppendLine(speaks switch
        {
            "modbus" => Modbus(ready, corner, replyMs),
            "text" => Text(isChecked),
            _ => string.Create(CultureInfo.InvariantCulture, $"kg_per_count = {ready["kg_per_count"]![corner]}"),
        });
        if (ready["slaves"]![$"{corner} tilt"] is { } slave)
            text.AppendLine(Tilt(ready, slave, replyMs));
        return text.ToString();
    }

    private static string Modbus(JsonNode ready, string corner, int replyMs)
    {
        var text = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"""
            protocol = "modbus-rtu"
            slave = {ready["slaves"]![corner]}
            poll_hz = 20
            reply_timeout_ms = {replyMs}
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

    private static string Tilt(JsonNode ready, JsonNode slave, int replyMs) => $"""
        [pads.tilt]
        link = "{ready["bus"]}"
        protocol = "modbus-rtu"
        slave = {slave}
        poll_hz = 10
        reply_timeout_ms = {replyMs}
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
