using System.Net;
using System.Net.Sockets;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using MQTTnet;
using MQTTnet.Formatter;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Faces.Mqtt.Broker;

namespace Daemon.Tests.Faces.Mqtt.Broker;

/// <summary>The embedded broker on a port of its own, with a clock that stands until it is moved, and real clients.</summary>
internal sealed class BrokerBench : IAsyncDisposable
{
    private readonly EmbeddedBroker _broker;
    private readonly List<IDisposable> _clients = [];

    private BrokerBench()
    {
        using (var free = new TcpListener(IPAddress.Loopback, 0))
        {
            free.Start();
            Port = ((IPEndPoint)free.LocalEndpoint).Port;
        }

        _broker = new EmbeddedBroker(new MqttConfiguration(BrokerKind.Embedded, "127.0.0.1", Port, 10, null, null), Pass, Counts, Time, NullLogger<EmbeddedBroker>.Instance);
    }

    public int Port { get; }

    public FakeTimeProvider Time { get; } = new();

    public BrokerPass Pass { get; } = new();

    public BrokerCounts Counts { get; } = new(NullLogger<BrokerCounts>.Instance);

    public static async Task<BrokerBench> Start()
    {
        var bench = new BrokerBench();
        await bench._broker.StartAsync(CancellationToken.None);
        return bench;
    }

    /// <summary>Bytes to and from the broker, by hand.</summary>
    public RawGuest Raw()
    {
        var guest = new RawGuest(Port);
        _clients.Add(guest);
        return guest;
    }

    /// <summary>A client of the library that keeps nothing alive, since the bench's clock leaps.</summary>
    public async Task<(IMqttClient Client, MqttClientConnectResult Answer)> Client(MqttProtocolVersion version = MqttProtocolVersion.V500, bool isDaemon = false)
    {
        var client = new MqttClientFactory().CreateMqttClient();
        _clients.Add(client);
        var options = new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", Port).WithProtocolVersion(version).WithNoKeepAlive();
        if (isDaemon)
            options.WithClientId(Pass.ClientId).WithCredentials(Pass.ClientId, Pass.Secret);
        return (client, await client.ConnectAsync(options.Build()));
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var client in _clients)
            client.Dispose();
        await _broker.StopAsync(CancellationToken.None);
        _broker.Dispose();
    }
}
