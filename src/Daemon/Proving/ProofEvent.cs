using System.Text.Json.Serialization;
using ScaleLink.Weighing.Calibration;

namespace ScaleLink.Daemon.Proving;

/// <summary>One step of a proof, as it stands in the ledger. Exactly one of the happenings is set.</summary>
public sealed record ProofEvent
{
    /// <summary>Number of the proof; 0 in the entry that begins it, whose own number it becomes.</summary>
    public long Proof { get; init; }

    /// <summary>Begun by this plan.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ProofPlan? Begun { get; init; }

    /// <summary>A point was read.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public TakenReading? Taken { get; init; }

    /// <summary>This step was left out.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ProofStep? Skipped { get; init; }

    /// <summary>The last point was taken back.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public bool SteppedBack { get; init; }

    /// <summary>A run was thrown away.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? RunAgain { get; init; }

    /// <summary>What was left was left out.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public bool Finished { get; init; }

    /// <summary>Given up or rejected, with the reason.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Ended { get; init; }
}
