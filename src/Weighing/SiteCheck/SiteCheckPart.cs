using System.Text.Json.Serialization;

namespace ScaleLink.Weighing.SiteCheck;

/// <summary>What takes away from the trust in a cross weight at this place.</summary>
enum SiteCheckPartKind
{
    /// <summary>Zeros that move after they were taken.</summary>
    Drift,
    /// <summary>Slope of the plane through the pads.</summary>
    Slope,
    /// <summary>What no plane through the pads explains.</summary>
    Warp,
    /// <summary>Each pad's own tilt.</summary>
    Tilt,
    /// <summary>Span of pads that are warmer or colder than at their calibration procedure.</summary>
    Temperature,
    /// <summary>Calibration of the pads.</summary>
    Calibration,
    /// <summary>Ground that gives way.</summary>
    Ground,
}

/// <summary>One part of the uncertainty, half width of a 95 % interval of cross weight.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Worst">The pad with the largest share in it; null where all share it.</param>
/// <param name="ReadingPercent">In a cross weight read here, percent; null: it cannot be told.</param>
/// <param name="ChangePercent">In a change between two readings within the hour, percent; null: it cannot be told.</param>
/// <param name="Words">What it is, with its size in its own unit.</param>
/// <param name="Remedy">What makes it smaller.</param>
sealed record SiteCheckPart(SiteCheckPartKind Kind, Corner? Worst, double? ReadingPercent, double? ChangePercent, Sentence Words, [property: JsonPropertyName("mend")] string Remedy);
