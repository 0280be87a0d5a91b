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

    public static string Target(Target target, Glyphs glyphs) => Target(target.CrossWeightPercent, target.TolerancePercent, glyphs);

    public static string Target(double percent, double tolerancePercent, Glyphs glyphs) => new TargetBand(percent, tolerancePercent).PercentText.Replace("±", glyphs.PlusMinus, StringComparison.Ordinal);

    /// <summary>Distance from the target, to the place that the uncertainty supports.</summary>
    public static string Off(Loads loads) => loads.OffTarget is { } off ? ValueText.Of(off.Size, Unit.Percent).Estimate : "";
}
