using ScaleLink.Daemon.Configuration;

namespace ScaleLink.Daemon.Faces;

/// <summary>How it stands between the daemon and its broker.</summary>
internal sealed class BrokerState(MqttConfiguration broker)
{
    private const int LongestReason = 200;

    /// <summary>Where the broker is; empty when there is to be none.</summary>
    public string Place { get; } = broker.Broker == BrokerKind.Off ? "" : $"{broker.Host}:{broker.Port}";

    /// <summary>Whether the broker has answered lately.</summary>
    public bool IsConnected { get; private set; }

    /// <summary>Why it does not answer; empty while it does, and before it was asked.</summary>
    public string Why { get; private set; } = "";

    public void Connected() => (IsConnected, Why) = (true, "");

    public void Lost(string why) => (IsConnected, Why) = (false, PlainText.Clean(why, LongestReason));
}
