// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What a page or a terminal meets on its way to the daemon.</summary>
public static class ConnectionCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("Between daemon and reader", "What a page or a terminal meets on its way to the daemon.");

    public static readonly Code NoAnswer = Area.Declare(420, "No daemon answers", "Start the daemon, or correct its address.");
    public static readonly Code NoAddress = Area.Declare(421, "This is no address of a daemon", "Write it like http://127.0.0.1:5090.");
    public static readonly Code NotTheDaemon = Area.Declare(422, "Something else than the daemon's gRPC port answers", "Give the gRPC port; the page's port is another one.");
    public static readonly Code BrokenOff = Area.Declare(423, "The daemon broke a call or a stream off", "See the daemon's log; it is asked again.");
    public static readonly Code TooSlow = Area.Declare(424, "The daemon does not answer in time", "See whether its machine is overloaded or asleep.");
    public static readonly Code DeviceTooSlow = Area.Declare(425, "This device is too slow for the readings", "The page asks for fewer by itself. Close other pages and programs on it.");
    public static readonly Code StepUnknown = Area.Declare(426, "Whether a step is on record is not known: neither it nor the question about it was answered", "Look at what is on record before you take it again.");
    public static readonly Code StepNotOnRecord = Area.Declare(427, "A step whose answer was lost is not on record", "Take it again.");
    public static readonly Code StepOnRecord = Area.Declare(428, "A step whose answer was lost is on record", "Look at it; it need not be taken again.");
    public static readonly Code StepUnderWay = Area.Declare(429, "A step is still under way", "Wait, then look at what is on record: a slow disk takes its time.");
}
