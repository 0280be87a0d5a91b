using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Json;

/// <summary>A zero on record.</summary>
internal sealed record ZeroJson(string? Time, string Who, double Counts, double? ShiftKg)
{
    public static ZeroJson? Of(ZeroRecord? zero) => zero is null ? null : new ZeroJson(
        zero.Time?.ToDateTime().ToString("yyyy-MM-ddTHH:mm:ss.fffZ"), PeerText.Clean(zero.Who, 64), zero.Counts, zero.HasShiftKg ? zero.ShiftKg : null);
}

/// <summary>What the link of a pad has counted.</summary>
internal sealed record CountersJson(ulong Bytes, ulong Frames, ulong BadFrames, ulong SkippedBytes, ulong MissedSamples, ulong RepeatedSamples, ulong Opened)
{
    public static CountersJson? Of(LinkCounters? c) => c is null ? null
        : new CountersJson(c.Bytes, c.Frames, c.BadFrames, c.SkippedBytes, c.MissedSamples, c.RepeatedSamples, c.Opened);
}

/// <summary>One pad.</summary>
internal sealed record PadJson
{
    public required string Corner { get; init; }
    public required string State { get; init; }
    public string? Link { get; init; }
    public string? SerialNumber { get; init; }
    public string? Firmware { get; init; }
    public uint? Cells { get; init; }
    public double? CapacityKg { get; init; }
    public double? StatedRateHz { get; init; }
    public double? MeasuredRateHz { get; init; }
    public double? AgeMs { get; init; }
    public ValueJson? LoadKg { get; init; }
    public double? PitchDeg { get; init; }
    public double? RollDeg { get; init; }
    public double? TemperatureC { get; init; }
    public ZeroJson? Zero { get; init; }
    public bool Calibrated { get; init; }
    public string? Calibration { get; init; }
    public CountersJson? Counters { get; init; }
    public double? ClockDriftPpm { get; init; }
    public double? TransportJitterMs { get; init; }
    public IReadOnlyList<Diagnostic>? Faults { get; init; }

    public static PadJson Of(Pad pad) => new()
    {
        Corner = pad.Corner.Name(),
        State = Words.State(pad.State),
        Link = Text(pad.Link),
        SerialNumber = Text(pad.SerialNumber),
        Firmware = Text(pad.Firmware),
        Cells = pad.HasCells ? pad.Cells : null,
        CapacityKg = pad.HasCapacityKg ? pad.CapacityKg : null,
        StatedRateHz = pad.HasStatedRateHz ? pad.StatedRateHz : null,
        MeasuredRateHz = pad.HasMeasuredRateHz ? pad.MeasuredRateHz : null,
        AgeMs = pad.HasAgeMs ? pad.AgeMs : null,
        LoadKg = ValueJson.Of(pad.LoadKg),
        PitchDeg = pad.HasPitchDeg ? pad.PitchDeg : null,
        RollDeg = pad.HasRollDeg ? pad.RollDeg : null,
        TemperatureC = pad.HasTemperatureC ? pad.TemperatureC : null,
        Zero = ZeroJson.Of(pad.Zero),
        Calibrated = pad.Calibrated,
        Calibration = Text(pad.Calibration),
        Counters = CountersJson.Of(pad.Counters),
        ClockDriftPpm = pad.HasClockDriftPpm ? pad.ClockDriftPpm : null,
        TransportJitterMs = pad.HasTransportJitterMs ? pad.TransportJitterMs : null,
        Faults = pad.Faults.Count > 0 ? [.. pad.Faults.Select(DiagnosticReader.Read)] : null,
    };

    private static string? Text(string text) => text.Length > 0 ? PeerText.Clean(text, 120) : null;
}

/// <summary>What <c>pads --json</c> prints. Old lists stand under another name than live ones.</summary>
internal sealed record PadsJson
{
    public required string State { get; init; }
    public double? AgeMs { get; init; }
    public string? Bay { get; init; }
    public IReadOnlyList<PadJson>? Pads { get; init; }
    public IReadOnlyList<PadJson>? HeldPads { get; init; }
    public Diagnostic? Trouble { get; init; }

    public static PadsJson Of(Judged<ListPadsResponse> view)
    {
        IReadOnlyList<PadJson>? pads = view.Message is { } list ? [.. list.Pads.Select(PadJson.Of)] : null;
        return new PadsJson
        {
            State = StateWord.Of(view.Freshness),
            AgeMs = view.Age is { } age ? Math.Round(age.TotalMilliseconds, 1) : null,
            Bay = view.Message is { } message ? PeerText.Clean(message.Bay, 32) : null,
            Pads = view.Freshness == Freshness.Live ? pads : null,
            HeldPads = view.Freshness == Freshness.Held ? pads : null,
            Trouble = view.Trouble,
        };
    }
}
