// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What is wrong with height measurements, or keeps the patch from being corrected.</summary>
public static class PatchCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("The flat patch", "What is wrong with height measurements, or keeps the patch from being corrected.");

    public static readonly Code HeightsIncomplete = Area.Declare(520, "Too few height measurements to know all four pads", "Measure the heights between the pads all round.");
    public static readonly Code HeightsDisagree = Area.Declare(521, "Height measurements contradict each other", "Measure the named one again.");
    public static readonly Code SlopeBeyondLimit = Area.Declare(522, "The patch slopes more than the correction is good for", "Level the pads with shims first.");
    public static readonly Code WarpBeyondLimit = Area.Declare(523, "The patch is warped more than the correction is good for", "Level the pads with shims first.");
    public static readonly Code TiltBeyondLimit = Area.Declare(524, "A pad is tilted more than the correction is good for", "Level the pad.");
    public static readonly Code RatesUnknown = Area.Declare(525, "The warp correction needs rates that nobody stated", "State them in the car file, or level the pads.");
    public static readonly Code CgHeightUnknown = Area.Declare(526, "The slope correction needs the height of the centre of gravity", "Measure it by lifting an axle, or level the pads.");
    public static readonly Code ReversalDisagrees = Area.Declare(527, "The two halves of a reversal test do not belong together", "Read both ways at least twice, on the same marks.");
    public static readonly Code ShimsDoNotReach = Area.Declare(528, "The shims at hand cannot level the pads", "Get the missing shims, or accept the spread.");
    public static readonly Code InputUnusable = Area.Declare(529, "A height, a shim or a span is not a usable number", "Give it in mm, within the named limits.");
    public static readonly Code NoHeightMeasurement = Area.Declare(532, "The patch has not been measured", "Measure the heights between the pads and enter them: Patch on the page, or scalelink patch heights FILE.");
    public static readonly Code NothingMeasuredTwice = Area.Declare(533, "Nothing was measured twice: a wrong reading would not show", "Measure round the patch, four differences: they close on themselves.");
    public static readonly Code CorrectionUnknown = Area.Declare(534, "There is no such correction of the patch", "Name slope or warp; tilt is switched in the bay file, pad by pad.");
}
