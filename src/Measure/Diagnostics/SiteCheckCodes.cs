// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What a watch over empty pads finds, and what it is refused for.</summary>
public static class SiteCheckCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("The site check", "What a watch over empty pads finds, and what it is refused for.");

    public static readonly Code PadTouched = Area.Declare(580, "Something stood on a pad for a while", "Keep off the pads while they are watched.");
    public static readonly Code ZeroJumped = Area.Declare(581, "A zero stands elsewhere since the pad was touched", "See that nothing lies on the pad, that it stands firm and its cable pulls at nothing; then zero again.");
    public static readonly Code ZeroDrifts = Area.Declare(582, "A zero drifts", "Shade the pad, let it warm through, and zero again before each weighing.");
    public static readonly Code TemperatureUnlike = Area.Declare(583, "One pad warms unlike the others", "Keep sun, heat, wind and wet off it, and wait.");
    public static readonly Code GroundMoves = Area.Declare(584, "The ground under a pad gives way", "Put it on a board or on firmer ground, measure the heights, and watch again.");
    public static readonly Code FarFromCalibration = Area.Declare(585, "A pad is used at a temperature far from that of its calibration", "Calibrate it near the temperature of its use, or bring it nearer: shade, shelter.");
    public static readonly Code PatchUncorrected = Area.Declare(586, "Slope or warp of the patch is left in the loads", "Level the pads, or switch the correction on.");
    public static readonly Code EndedEarly = Area.Declare(587, "The watch ended before its time", "Do what the message names, then watch again.");
    public static readonly Code TooShort = Area.Declare(588, "Too little was seen to tell anything", "Watch longer, best the whole ten minutes.");
    public static readonly Code PadLoaded = Area.Declare(589, "A pad is loaded", "Take off whatever stands on it, the car first; if it is empty, zero it.");
    public static readonly Code PadUnzeroed = Area.Declare(590, "A pad has no zero or no sensitivity", "Zero the empty pads first: scalelink zero, or Health on the page.");
    public static readonly Code PadNotLive = Area.Declare(591, "A pad is not live", "Repair its link first; scalelink pads names what is wrong.");
    public static readonly Code UnderWay = Area.Declare(592, "A watch is under way", "Wait for it, or stop it.");
    public static readonly Code NoWatch = Area.Declare(593, "No watch is under way", "Start one.");
    public static readonly Code InputUnusable = Area.Declare(594, "A number of the request is not usable", "Give one within the limits that the message names.");
}
