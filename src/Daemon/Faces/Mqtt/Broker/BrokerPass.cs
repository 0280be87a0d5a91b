using System.Security.Cryptography;

namespace ScaleLink.Daemon.Faces.Mqtt.Broker;

/// <summary>By what the embedded broker knows its own daemon: made anew for each run.</summary>
internal sealed class BrokerPass
{
    public string ClientId { get; } = $"scalelinkd-{Guid.NewGuid():N}";

    public string Secret { get; } = Convert.ToHexString(RandomNumberGenerator.GetBytes(16));
}
