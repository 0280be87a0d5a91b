using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using ScaleLink.Measure;

namespace ScaleLink.Daemon.Faces.Mqtt;

/// <summary>A value and one standard uncertainty; absent uncertainty: nothing is claimed.</summary>
internal sealed record MqttValue(double Value, double? U)
{
    /// <summary>To the places that any uncertainty of a bay supports; nothing for nothing.</summary>
    public static MqttValue? Of(Value? value) => value is { } known ? Of(known) : null;

    /// <summary>The same of a value that is known.</summary>
    public static MqttValue Of(Value value) => new(Math.Round(value.Estimate, 4), value.StandardUncertainty is { } u ? Math.Round(u, 5) : null);
}

/// <summary>One corner of the loads.</summary>
internal sealed record MqttCorner(double? LoadKg, double? UKg, bool Calibrated, string? Calibration, IReadOnlyList<string>? Faults);

/// <summary>Live loads. Never retained.</summary>
internal sealed record MqttLoads
{
    public required string T { get; init; }
    public required long Seq { get; init; }
    public required string StartId { get; init; }
    public required double AgeMs { get; init; }
    public required double MaxAgeS { get; init; }
    public required bool Valid { get; init; }
    public required string Verdict { get; init; }
    public required string Remark { get; init; }
    public required IReadOnlyDictionary<string, MqttCorner> Corners { get; init; }
    public MqttValue? TotalKg { get; init; }
    public MqttValue? CrossWeightPercent { get; init; }
    public MqttValue? FrontWeightPercent { get; init; }
    public MqttValue? LeftSideWeightPercent { get; init; }
    public MqttValue? FrontLeftRightDifferenceKg { get; init; }
    public MqttValue? RearLeftRightDifferenceKg { get; init; }
}

/// <summary>Whether the daemon is there. Retained; the will says offline.</summary>
internal sealed record MqttState(string State, string? T, string? StartId, string? Version, string? Reason);

/// <summary>What a reader needs to know of the bay. Retained.</summary>
internal sealed record MqttConfig
{
    public required string T { get; init; }
    public required string Bay { get; init; }
    public required IReadOnlyList<string> Corners { get; init; }
    public required double SettledToleranceKg { get; init; }
    public required double LoadsRateHz { get; init; }
    public required string CrossWeightFormula { get; init; }
    public double? TargetCrossWeightPercent { get; init; }
    public double? TargetTolerancePercent { get; init; }
}

/// <summary>A fault: its code, what is wrong, what to do.</summary>
internal sealed record MqttDiagnostic(string Code, string Message, string Remedy, string? Since = null);

/// <summary>One pad. Retained, sent on change.</summary>
internal sealed record MqttPad
{
    public required string T { get; init; }
    public required string StartId { get; init; }
    public required string Corner { get; init; }
    public required string State { get; init; }
    public string? SerialNumber { get; init; }
    public string? Firmware { get; init; }
    public double? RateHz { get; init; }
    public string? ZeroedAt { get; init; }
    public required bool Calibrated { get; init; }
    public required IReadOnlyList<MqttDiagnostic> Faults { get; init; }
}

/// <summary>Names in snake case; what is not known is left out.</summary>
[JsonSerializable(typeof(MqttLoads))]
[JsonSerializable(typeof(MqttState))]
[JsonSerializable(typeof(MqttConfig))]
[JsonSerializable(typeof(MqttPad))]
[JsonSerializable(typeof(MqttSession))]
[JsonSerializable(typeof(MqttWeighing))]
internal sealed partial class MqttJson : JsonSerializerContext
{
    /// <summary>Plain text stays plain: no reader of these topics puts them into a page unescaped.</summary>
    public static MqttJson Plain { get; } = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });
}
