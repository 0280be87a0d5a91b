// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What the daemon meets when it publishes, and what it refuses in a request.</summary>
public static class ServiceCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("Publishing and requests", "What the daemon meets when it publishes, and what it refuses in a request.");

    public static readonly Code BrokerLost = Area.Declare(401, "The MQTT broker is lost", "Start it, or correct its address; it is tried again by itself.");
    public static readonly Code PortTaken = Area.Declare(402, "A port of the daemon is in use by another program", "Stop the other program, or choose another port.");
    public static readonly Code BrokerPortUnusable = Area.Declare(403, "The port of the built-in MQTT broker cannot be used", "Stop the other broker, or choose another port.");
    public static readonly Code BrokerFull = Area.Declare(404, "A program was turned away by the built-in MQTT broker, which has as many connections as it takes", "See which program opens so many; a workshop with more readers takes a broker of its own.");
    public static readonly Code BrokerPacketTooLarge = Area.Declare(405, "A program that sent a packet of more than 64 kB to the built-in MQTT broker was disconnected", "Send less at once, or take a broker of your own.");
    public static readonly Code BrokerRetainsNoMore = Area.Declare(406, "The built-in MQTT broker did not keep a message of another program: it keeps 200 of them, and 1 MB together", "Clear retained messages that nobody needs, or take a broker of your own.");
    public static readonly Code BrokerFiltersFull = Area.Declare(407, "A program subscribed to more than the built-in MQTT broker allows one client: 100 topic filters, 16 kB together", "Subscribe with wildcards.");
    public static readonly Code BrokerClientSilent = Area.Declare(408, "A client of the built-in MQTT broker was silent for one and a half times its keep-alive and was disconnected", "See whether that program still runs; it may connect again.");
    public static readonly Code BrokerClientNeverConnected = Area.Declare(409, "A connection to the built-in MQTT broker did not say within 10 s who it is and was closed", "See which program connects there without speaking MQTT.");
    public static readonly Code NoReadingYet = Area.Declare(410, "The daemon has only just started: no reading yet", "Ask again in a second.");
    public static readonly Code RateNotOffered = Area.Declare(411, "A rate of messages is not offered", "Ask for 0.1 to 20 a second.");
    public static readonly Code NameMissing = Area.Declare(412, "This goes on record and needs a name beside it", "Enter a name.");
    public static readonly Code NoPadThere = Area.Declare(413, "A corner is missing, or has no pad in this bay", "Ask which corners there are.");
    public static readonly Code ListeningTimeNotOffered = Area.Declare(414, "This time of listening is not offered", "Ask for 2 to 60 seconds.");
    public static readonly Code NumberUnusable = Area.Declare(415, "A number of the request makes no sense", "Give one within the limits that the message names.");
    public static readonly Code FormatNotOffered = Area.Declare(416, "That format is not offered", "Ask for CSV, JSON or HTML.");
    public static readonly Code HostNameUnknown = Area.Declare(417, "The bay is not asked for under that name", "Open it by its address, or add the name to listen.names in the bay file.");
    public static readonly Code TooManyStreams = Area.Declare(418, "One connection watches more than the daemon serves over one", "End calls that nobody reads, take loads, pads and session in one by Feed.WatchBay, or open a second connection.");
    public static readonly Code RecordingUnwritable = Area.Declare(441, "No link recording can be written", "Free space there, or name another folder in recorder.path.");
    public static readonly Code RecordingTimeNotOffered = Area.Declare(442, "So many seconds cannot be recorded", "Ask for 1 to 600.");
    public static readonly Code RecordingNotFound = Area.Declare(443, "There is no link recording of that name", "Ask for the list of names; old ones are deleted.");
}
