// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What is wrong in the bay file.</summary>
public static class ConfigurationCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("The bay file", "What is wrong in the bay file.");

    public static readonly Code FileUnreadable = Area.Declare(1, "The bay file cannot be read", "Give its path with --bay FILE.");
    public static readonly Code NotToml = Area.Declare(2, "The file is not TOML", "Correct the syntax at the named line.");
    public static readonly Code BlockMisplaced = Area.Declare(3, "A block stands twice, or in another form than it is meant", "Write [name] for one block, [[name]] for a list of them.");
    public static readonly Code KeyMissing = Area.Declare(4, "A key is missing", "Add it; the message names it and gives an example.");
    public static readonly Code KeyUnknown = Area.Declare(5, "A key or block is not known", "Compare its spelling with the known ones.");
    public static readonly Code ValueUnusable = Area.Declare(6, "A value is not of the kind that its key takes, or contradicts another", "Write what the message asks for.");
    public static readonly Code BayNameUnusable = Area.Declare(7, "The name of the bay cannot stand in an MQTT topic", "Use 1 to 32 letters, digits, - and _.");
    public static readonly Code NoPads = Area.Declare(8, "The file names no pads", "Add one [[pads]] block for each pad.");
    public static readonly Code CornerTwice = Area.Declare(9, "Two pads stand under one corner", "Give each corner one pad.");
    public static readonly Code PortShared = Area.Declare(10, "Two sources share one port", "Give each its own port. Only modbus-rtu slaves can share one.");
    public static readonly Code SerialNumberTwice = Area.Declare(11, "Two pads claim one serial number", "Read the number on each pad and correct one of them.");
    public static readonly Code LinkUnusable = Area.Declare(12, "A link is neither a port nor an address", "Write a device path, COM3, or tcp://host:port.");
    public static readonly Code BaudRateUnusual = Area.Declare(13, "A baud rate is none that adapters offer", "Use one of the rates that the message lists.");
    public static readonly Code PortsEqual = Area.Declare(14, "Two of page, gRPC and embedded broker are given the same port", "Give them different ports.");
    public static readonly Code AddressRefused = Area.Declare(15, "The address to listen on is none, or is open to other machines without leave", "Use 127.0.0.1, or say that other machines may ask.");
    public static readonly Code KeyMeansNothing = Area.Declare(16, "A key means nothing to the protocol of its pad", "Take it out, or correct the protocol.");
    public static readonly Code SlaveTwice = Area.Declare(17, "Two pads are one Modbus slave on one line", "Set different addresses in the devices, then here.");
    public static readonly Code LineSettingsDiffer = Area.Declare(18, "Slaves of one line differ in baud rate, parity or stop bits", "Set all slaves of one line alike.");
    public static readonly Code ReadingsUnusable = Area.Declare(19, "What a source reads does not make a pad", "Name a load for each cell; pitch and roll for a tilt source.");
    public static readonly Code PatternUnusable = Area.Declare(20, "A pattern for text lines cannot be used", "Write a .NET regular expression without look-around, with named groups.");
    public static readonly Code HostNameUnusable = Area.Declare(21, "A name under which browsers may ask is not the name of a machine", "Write names with commas between, without port and http://.");
    public static readonly Code CarFileUnreadable = Area.Declare(22, "The car file of the bay file cannot be read", "Correct the path; it is meant from where the bay file lies.");
    public static readonly Code FileBeyondBounds = Area.Declare(23, "The file is larger, or nested deeper, or has more blocks than a bay file can have", "See that it is the bay file; a bay has four pads.");
    public static readonly Code TextUnprintable = Area.Declare(24, "A text has signs that do not show, such as escape or marks that turn the direction of writing", "Type it anew, with letters, digits and signs that show.");
    public static readonly Code PasswordFileOpen = Area.Declare(25, "Everybody on this machine can read or change the password file", "chmod o-rwx FILE, then change the password: others may have read it.");
    public static readonly Code CheckTooSlow = Area.Declare(26, "The bay file could not be looked through in time", "See that its path is a plain file on a disk that answers, and so is what it names.");
}
