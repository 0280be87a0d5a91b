namespace ScaleLink.Daemon.Faces.Mqtt;

/// <summary>The work session in the bay. Retained, sent when it changes; without one only the state "none".</summary>
internal sealed record MqttSession
{
    public required string T { get; init; }
    public required string StartId { get; init; }
    public required string State { get; init; }
    public string? Id { get; init; }
    public long? Entry { get; init; }
    public string? Car { get; init; }
    public string? Title { get; init; }
    public string? StartedAt { get; init; }
    public double? TargetCrossWeightPercent { get; init; }
    public double? TargetTolerancePercent { get; init; }
    public int? Weighings { get; init; }
    public int? Adjustments { get; init; }
    public MqttValue? CrossWeightPercent { get; init; }
    public double? ExpandedPercent { get; init; }
    public int? Settles { get; init; }
    public string? Verdict { get; init; }
    public string? Turn { get; init; }
    public string? Left { get; init; }
    public MqttValue? PredictedCrossWeightPercent { get; init; }
    public string? Next { get; init; }
    public IReadOnlyList<MqttDiagnostic>? Findings { get; init; }
}

/// <summary>The last reading that was put on record. Retained; it stays after its session has ended.</summary>
internal sealed record MqttWeighing
{
    public required string T { get; init; }
    public required string StartId { get; init; }
    public required long Seq { get; init; }
    public required string Session { get; init; }
    public required string Car { get; init; }
    public required int Number { get; init; }
    public required string Kind { get; init; }
    public required bool Counts { get; init; }
    public required IReadOnlyDictionary<string, MqttCorner> Corners { get; init; }
    public required MqttValue TotalKg { get; init; }
    public required MqttValue CrossWeightPercent { get; init; }
    public required MqttValue FrontWeightPercent { get; init; }
    public required MqttValue LeftSideWeightPercent { get; init; }
    public required MqttValue FrontLeftRightDifferenceKg { get; init; }
    public required MqttValue RearLeftRightDifferenceKg { get; init; }
    public IReadOnlyDictionary<string, double>? Turns { get; init; }
    public MqttValue? PredictedCrossWeightPercent { get; init; }
    public IReadOnlyList<MqttDiagnostic>? Findings { get; init; }
}
