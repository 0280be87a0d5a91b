// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What is wrong with a port, or with the way to a device server.</summary>
public static class LinkCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("Ports and links", "What is wrong with a port, or with the way to a device server.");

    public static readonly Code PortMissing = Area.Declare(101, "The port is not there", "Plug the adapter in, or correct the link.");
    public static readonly Code PortForbidden = Area.Declare(102, "The port may not be opened by this user", "Add the user to the group that owns the port (often dialout), then log in again.");
    public static readonly Code PortBusy = Area.Declare(103, "The port is held by another program", "Stop the other program; a modem service that probes adapters is a usual one.");
    public static readonly Code NotSerialPort = Area.Declare(104, "This is no serial port", "Name the adapter's device, such as /dev/serial/by-path/....");
    public static readonly Code PortHungUp = Area.Declare(105, "The port hung up", "Check cable, adapter and hub; the link opens again by itself.");
    public static readonly Code PadSilent = Area.Declare(106, "The port is open, but the pad sends nothing", "Check the pad's power and its baud rate; restart the pad.");
    public static readonly Code ServerUnreachable = Area.Declare(107, "The device server cannot be reached", "Check that it runs and that its address and port are right.");
    public static readonly Code PortHeld = Area.Declare(108, "The port is held by another ScaleLink daemon", "End that daemon, or give it another port; this one then opens the port by itself.");
    public static readonly Code PortUnusable = Area.Declare(109, "The port cannot be used", "Pull the adapter out and plug it in again; if it stays, try another adapter.");
    public static readonly Code NameByOrder = Area.Declare(110, "The name of a port goes by the order of plugging in", "Write the name that stays with the socket.");
    public static readonly Code NameShared = Area.Declare(111, "Several adapters may have the name of a port", "Write the name that stays with the socket.");
    public static readonly Code LinkSilent = Area.Declare(112, "Nothing has come over a link for so long that it is opened again", "Check the power of pad and device server, and the cables.");
    public static readonly Code LineNotAsAsked = Area.Declare(113, "The driver of a port does not send characters as asked", "If the pad's values are garbled or missing, use another adapter, or set pad and bay file to 8 data bits without parity.");
}
