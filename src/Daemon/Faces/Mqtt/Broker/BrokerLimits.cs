namespace ScaleLink.Daemon.Faces.Mqtt.Broker;

/// <summary>What the embedded broker gives at most. Anybody on the machine may use it, so nobody must be able to use it up.</summary>
internal static class BrokerLimits
{
    /// <summary>Bytes of one packet of a guest, header and all. What a bay itself publishes stays below a tenth of it, and each guest can make the daemon hold one.</summary>
    public const int GuestPacket = 64 * 1024;

    /// <summary>Bytes of one packet of the daemon itself: a work session may grow, and its connection must not break by that.</summary>
    public const int OwnPacket = 1024 * 1024;

    /// <summary>Clients besides the daemon. A workshop has a handful; each costs a socket, two tasks and some 20 kB.</summary>
    public const int Guests = 100;

    /// <summary>Connections that have not yet said CONNECT. Beyond it the oldest gives way, so that whoever speaks at once gets in however many are silent.</summary>
    public const int Unintroduced = 50;

    /// <summary>Messages that guests may leave outside the daemon's topics: some for each of a workshop's programs.</summary>
    public const int RetainedMessages = 200;

    /// <summary>Bytes of these together, topics and all.</summary>
    public const int RetainedBytes = 1024 * 1024;

    /// <summary>
    /// Messages that wait for one client that does not read; the oldest goes first. All retained messages fit, guests' and the bay's, and then some seconds of loads.
    /// </summary>
    public const int PendingMessages = RetainedMessages + 50;

    /// <summary>Topic filters of one client: a reader needs one to ten.</summary>
    public const int Filters = 100;

    /// <summary>Bytes of these together.</summary>
    public const int FilterBytes = 16 * 1024;

    /// <summary>From the connection to the whole of its CONNECT: a program sends it at once, a person who tries by hand needs seconds.</summary>
    public static readonly TimeSpan IntroducedWithin = TimeSpan.FromSeconds(10);
}
