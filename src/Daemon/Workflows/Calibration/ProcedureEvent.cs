using System.Text.Json.Serialization;
using ScaleLink.Weighing.Calibration.Flow;

namespace ScaleLink.Daemon.Workflows.Calibration;

/// <summary>One step of a calibration procedure, as it stands in the ledger. Exactly one of the happenings is set.</summary>
internal sealed record ProcedureEvent
{
    /// <summary>Number of the calibration procedure; 0 in the entry that begins it, whose own number it becomes.</summary>
    [JsonPropertyName("proof")]
    public long Procedure { get; init; }

    /// <summary>Begun by this plan.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ProcedurePlan? Begun { get; init; }

    /// <summary>A point was read.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public TakenReading? Taken { get; init; }

    /// <summary>This step was left out.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ProcedureStep? Skipped { get; init; }

    /// <summary>The last point was taken back.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public bool SteppedBack { get; init; }

    /// <summary>A repetition was thrown away.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [JsonPropertyName("runAgain")]
    public int? RepetitionAgain { get; init; }

    /// <summary>What was left was left out.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public bool Finished { get; init; }

    /// <summary>Given up or rejected, with the reason.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Ended { get; init; }
}
