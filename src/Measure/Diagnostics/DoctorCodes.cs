// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What scalelink doctor finds on ports and pads.</summary>
public static class DoctorCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("Doctor", "What scalelink doctor finds on ports and pads.");

    public static readonly Code PortMissing = Area.Declare(451, "The port is not there", "Plug the adapter in, or correct the link in the bay file.");
    public static readonly Code PortForbidden = Area.Declare(452, "The port may not be opened by this user", "Join the group that owns it, or install the device rule of docs/adapters.md.");
    public static readonly Code PortHeld = Area.Declare(453, "The port is held by another program", "End that program; two readers take bytes from each other.");
    public static readonly Code AdapterSeized = Area.Declare(454, "A service that takes serial adapters runs and has not been told to leave this one alone", "Install the device rule of docs/adapters.md, or stop the service.");
    public static readonly Code AdapterLate = Area.Declare(455, "The adapter holds bytes back", "Install the device rule of docs/adapters.md.");
    public static readonly Code AdaptersAlike = Area.Declare(456, "The port's name may come to mean another adapter: equal ids", "Write the name that stays with the socket.");
    public static readonly Code NameByOrder = Area.Declare(457, "The port's name goes by the order of plugging in", "Write the name that stays with the socket.");
    public static readonly Code RateOff = Area.Declare(458, "The pad sends at another rate than it states or the bay file asks for", "Check baud rate, cable and hub; lower the pad's sample rate, or poll_hz of a slave.");
    public static readonly Code SamplesLost = Area.Declare(459, "Samples are lost, or there is a long gap", "Check cable and hub; plug the adapter into a port of its own.");
    public static readonly Code SamplesUnsound = Area.Declare(460, "Samples come from a converter at its limit or with a fault", "Take load off the pad; with the pad empty, check its cells and cables.");
    public static readonly Code CountsStill = Area.Declare(461, "Not one count changes: the converter stands still", "Restart the pad; check the wire between converter and microcontroller.");
    public static readonly Code Noisy = Area.Declare(462, "The reading varies too much to settle", "Keep off the pads. If it stays: shield and earth of the cell cables, chargers and inverters nearby.");
}
