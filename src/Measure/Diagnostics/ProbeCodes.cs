// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What keeps scalelink probe from listening.</summary>
public static class ProbeCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("Probe", "What keeps scalelink probe from listening.");

    public static readonly Code PortMissing = Area.Declare(471, "The port is not there", "Plug the adapter in; scalelink doctor lists what is wrong with adapters.");
    public static readonly Code PortForbidden = Area.Declare(472, "The port may not be opened by this user", "scalelink doctor says which group is missed.");
    public static readonly Code PortHeld = Area.Declare(473, "The port is held by another program", "Stop the daemon, or whatever else reads there; scalelink doctor names it.");
    public static readonly Code NotSerialPort = Area.Declare(474, "This is no serial port", "Name the adapter's device, such as /dev/serial/by-path/....");
    public static readonly Code PortLost = Area.Declare(475, "The port went away while it was listened to", "Check cable, adapter and hub, then try again.");
}
