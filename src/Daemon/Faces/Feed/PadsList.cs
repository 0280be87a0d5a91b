using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Faces.Mqtt.Broker;
using ScaleLink.Daemon.Runtime;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Faces.Feed;

/// <summary>The pads as they stand at this moment, in the words of the public API.</summary>
internal sealed class PadsList(LiveBay bay, BayConfiguration configuration, BrokerState broker, BrokerCounts refusals, ApiMapping mapping, BayClock clock)
{
    private readonly PadMapping _pads = new(mapping);

    public Wire.ListPadsResponse Now()
    {
        var list = new Wire.ListPadsResponse
        {
            Bay = configuration.Bay,
            Stamp = mapping.Stamp(bay.Newest?.Seq ?? 0, clock.NowNs, 2.5 * ChangeNudges.AtLeastEvery.TotalMilliseconds),
            Serving = new Wire.Serving
            {
                OtherMachines = configuration.Listen.OtherMachines,
                Broker = broker.Place,
                BrokerAnswers = broker.IsConnected,
                BrokerTrouble = broker.Why,
                BrokerRefusals = configuration.Mqtt.Broker == BrokerKind.Embedded ? Refusals() : null,
            },
        };
        list.Pads.AddRange(bay.Pads.Select(p => _pads.Pad(p.Snapshot())));
        return list;
    }

    private Wire.BrokerRefusals Refusals() => new()
    {
        Connections = refusals.Connections,
        PacketsTooLarge = refusals.PacketsTooLarge,
        RetainedMessages = refusals.RetainedMessages,
        Subscriptions = refusals.Subscriptions,
        SilentConnections = refusals.SilentConnections,
    };
}
