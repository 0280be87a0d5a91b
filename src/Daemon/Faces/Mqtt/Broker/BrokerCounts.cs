namespace ScaleLink.Daemon.Faces.Mqtt.Broker;

/// <summary>
/// What the embedded broker has turned away since the start. Each kind is told in the log the first time, then the tenth, the hundredth and so on: whoever
/// tries without end fills no log.
/// </summary>
internal sealed class BrokerCounts(ILogger<BrokerCounts> log)
{
    private ulong _connections, _packetsTooLarge, _retainedMessages, _subscriptions, _silentConnections;

    public ulong Connections => Interlocked.Read(ref _connections);

    public ulong PacketsTooLarge => Interlocked.Read(ref _packetsTooLarge);

    public ulong RetainedMessages => Interlocked.Read(ref _retainedMessages);

    public ulong Subscriptions => Interlocked.Read(ref _subscriptions);

    public ulong SilentConnections => Interlocked.Read(ref _silentConnections);

    public void RefusedConnection() => Tell(ref _connections, ServiceCodes.BrokerFull);

    public void RefusedPacket() => Tell(ref _packetsTooLarge, ServiceCodes.BrokerPacketTooLarge);

    public void RefusedToRetain() => Tell(ref _retainedMessages, ServiceCodes.BrokerRetainsNoMore);

    public void RefusedSubscription() => Tell(ref _subscriptions, ServiceCodes.BrokerFiltersFull);

    /// <param name="wasIntroduced">Whether it had said CONNECT.</param>
    public void EndedSilent(bool wasIntroduced) => Tell(ref _silentConnections, wasIntroduced ? ServiceCodes.BrokerClientSilent : ServiceCodes.BrokerClientNeverConnected);

    private void Tell(ref ulong count, Code code)
    {
        var times = Interlocked.Increment(ref count);
        if (IsPowerOfTen(times))
            log.LogWarning("Embedded broker, {Times} so far: {Diagnostic}", times, new Diagnostic(code, $"{code.Meaning}.", code.Remedy));
    }

    private static bool IsPowerOfTen(ulong number)
    {
        while (number % 10 == 0)
            number /= 10;
        return number == 1;
    }
}
