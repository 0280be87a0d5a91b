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
}
