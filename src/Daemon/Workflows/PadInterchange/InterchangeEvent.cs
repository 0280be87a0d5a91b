using System.Text.Json.Serialization;
using ScaleLink.Weighing.PadInterchange;

namespace ScaleLink.Daemon.Workflows.PadInterchange;

/// <summary>One step of interchanging the pads, as it stands in the ledger. Exactly one of the happenings is set.</summary>
internal sealed record InterchangeEvent
{
    /// <summary>Number of the pad interchange; 0 in the entry that begins it, whose own number it becomes.</summary>
    [JsonPropertyName("rotation")]
    public long Interchange { get; init; }

    /// <summary>The car was weighed.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public PlacementReading? Weighed { get; init; }

    /// <summary>This weighing, by its number from 1, was thrown away.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? ThrownAway { get; init; }

    /// <summary>It was finished, with this result.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public InterchangeResult? Finished { get; init; }

    /// <summary>Given up, with the reason.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Ended { get; init; }

    /// <summary>Remark of whoever finished it.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Note { get; init; }
}
