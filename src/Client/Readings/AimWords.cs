using ScaleLink.Api.V1;
using ScaleLink.Client.Runtime;
using ScaleLink.Measure;

namespace ScaleLink.Client.Readings;

/// <summary>The verdict on the target in words.</summary>
internal static class AimWords
{
    public static string Of(Aim aim, Loads loads, Glyphs glyphs) => aim switch
    {
        Aim.Within => $"on target {Target(loads.Target, glyphs)}",
        Aim.High => $"high by {Off(loads)} %",
        Aim.Low => $"low by {Off(loads)} %",
        Aim.TooCloseToTell => $"too close to the edge of {Target(loads.Target, glyphs)} to tell",
        _ => "",
    };

    public static string Target(Target target, Glyphs glyphs) => $"{target.CrossWeightPercent:0.0##} {glyphs.PlusMinus}{target.TolerancePercent:0.0##} %";

    /// <summary>Distance from the target, to the place that the uncertainty supports.</summary>
    public static string Off(Loads loads) => loads.OffTarget is { } off ? ValueText.Of(off.Size, Unit.Percent).Estimate : "";
}
