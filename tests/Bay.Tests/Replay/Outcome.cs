using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.Replay;

/// <summary>
/// What was published while a scene was played, without what differs from run to run: instants, ages, run ids, and how far apart
/// the daemon's own questions and blocks lay.
/// </summary>
internal static class Outcome
{
    private const string LiveLoads = "scalelink/v1/unit6/loads";
    private static readonly Corner[] Corners = [Corner.Lf, Corner.Rf, Corner.Lr, Corner.Rr];

    public static string Of(ReplayBay bay, Scene scene)
    {
        var text = new StringBuilder();
        foreach (var corner in Corners)
        {
            var asked = scene.IsAsked(Name(corner));
            text.AppendLine(Name(corner));
            text.AppendLine($"  says          {Said(bay, corner)}");
            text.AppendLine($"  seen          {States(bay, corner)}");
            text.AppendLine($"  faults        {Faults(bay.Pads.SelectMany(p => Pad(p, corner).Faults.Select(f => (f.Code, f.Message))), corner, scene)}");
            text.AppendLine($"  MQTT faults   {Faults(bay.Topics.Received.Where(r => r.Topic.EndsWith($"/pads/{Name(corner)}", StringComparison.Ordinal)).SelectMany(r => Codes(r.Payload)), corner, scene)}");
            text.AppendLine($"  counters      {(asked ? "not compared: the daemon asks at its own pace" : Counters(Pad(bay.Pads[^1], corner).Counters))}");
            text.AppendLine($"  samples       {(asked ? Distinct(Samples(bay, corner)) : Digest(Samples(bay, corner)))}");
        }

        var hasTime = scene.Speak == "pad-frames";
        text.AppendLine($"loads           {GrpcLoads(bay, hasTime)}");
        text.AppendLine($"MQTT loads      {MqttLoads(bay, hasTime)}");
        return text.ToString();
    }

    private static string Said(ReplayBay bay, Corner corner)
    {
        var said = bay.Pads.Select(p => Pad(p, corner)).Where(p => p.SerialNumber.Length > 0)
            .Select(p => Invariant($"{p.SerialNumber} \"{p.Firmware}\" {p.Cells} cells {p.CapacityKg} kg {p.StatedRateHz} Hz")).Distinct();
        return string.Join("; ", said);
    }

    // Waiting and silence come and go with the machine's own breath.
    private static string States(ReplayBay bay, Corner corner) =>
        string.Join(" ", new[] { PadState.Live, PadState.Refused }.Where(s => bay.Pads.Any(p => Pad(p, corner).State == s)).Select(s => s.ToString().ToLowerInvariant()));

    private static string Faults(IEnumerable<(string Code, string Message)> seen, Corner corner, Scene scene)
    {
        var asked = scene.IsAsked(Name(corner));
        return string.Join(" ", seen.Where(f => !IsTimed(f, asked) || scene.Timed.Contains($"{Name(corner)} {f.Code}")).Select(f => f.Code).Distinct().Order());
    }

    private static bool IsTimed((string Code, string Message) fault, bool asked) =>
        fault.Code is "SL-106" or "SL-211" or "SL-213" || fault.Code == "SL-201" && (asked || fault.Message.StartsWith("Bytes arrive", StringComparison.Ordinal));

    private static string Counters(LinkCounters c) =>
        $"{c.Bytes} bytes, {c.Frames} frames, {c.BadFrames} bad, {c.SkippedBytes} bytes skipped, {c.MissedSamples} missed, {c.RepeatedSamples} repeated, opened {c.Opened} times";

    private static List<string> Samples(ReplayBay bay, Corner corner) =>
        [.. bay.Samples.Where(b => b.Corner == corner).SelectMany(b => b.Samples).Select(Line)];

    private static string Line(Sample s) => Invariant(
        $"{s.PadSeq} [{string.Join(' ', s.Counts)}] status {s.Status} load {(s.HasLoadKg ? $"{s.LoadKg:0.000}" : "none")} pitch {(s.HasPitchDeg ? $"{s.PitchDeg:0.000}" : "none")} temperature {(s.HasTemperatureC ? $"{s.TemperatureC:0.00}" : "none")}");

    private static string Digest(List<string> samples) => samples.Count == 0
        ? "none"
        : $"{samples.Count}, all of them {Hash(samples)}\n    first       {samples[0]}\n    last        {samples[^1]}";

    private static string Hash(List<string> lines) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', lines))))[..16];

    // The loads of a resting car do not change, whichever answer they come from.
    private static string Distinct(List<string> samples) =>
        string.Join("; ", samples.Select(s => s[..s.IndexOf(" pitch", StringComparison.Ordinal)]).Distinct().Order(StringComparer.Ordinal));

    private static string GrpcLoads(ReplayBay bay, bool hasTime) => bay.Loads.LastOrDefault(l => l.TotalKg is not null && (l.CrossWeightPercent is not null || !hasTime)) is not { } loads
        ? "never all four"
        : Describe(loads.Corners.Select(c => c.LoadKg.Estimate), loads.TotalKg.Estimate, hasTime ? loads.CrossWeightPercent.Estimate : null);

    private static string MqttLoads(ReplayBay bay, bool hasTime)
    {
        var loads = bay.Topics.Received.LastOrDefault(r => r.Topic == LiveLoads && r.Payload["total_kg"] is not null && (r.Payload["cross_weight_percent"] is not null || !hasTime)).Payload;
        return loads is null ? "never all four" : Describe(Simulator.Corners.Select(c => loads["corners"]![c]!["load_kg"]!.GetValue<double>()), Value(loads["total_kg"])!.Value, hasTime ? Value(loads["cross_weight_percent"]) : null);
    }

    private static double? Value(JsonNode? quantity) => quantity?["value"]?.GetValue<double>();

    private static string Describe(IEnumerable<double> corners, double total, double? cross) =>
        Invariant($"{string.Join(' ', corners.Select(c => Invariant($"{c:0.00}")))} kg, together {total:0.00} kg, cross weight {(cross is { } percent ? Invariant($"{percent:0.000} %") : "not compared: it waits for the car to settle")}");

    private static IEnumerable<(string, string)> Codes(JsonNode pad) =>
        pad["faults"] is JsonArray faults ? faults.Select(f => (f!["code"]!.GetValue<string>(), f["message"]!.GetValue<string>())) : [];

    private static Pad Pad(ListPadsResponse list, Corner corner) => list.Pads.Single(p => p.Corner == corner);

    private static string Name(Corner corner) => corner.ToString().ToUpperInvariant();

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
