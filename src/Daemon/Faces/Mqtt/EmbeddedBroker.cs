using System.Net;
using System.Net.Sockets;
using MQTTnet.Protocol;
using MQTTnet.Server;
using MQTTnet.Server.Internal.Adapter;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Faces.Mqtt;

/// <summary>
/// A broker of the daemon's own, on loopback, for a bench that has none. Anybody on the machine may read;
/// under <c>scalelink/</c> only the daemon may publish, so that no other program can pass off loads as the bay's.
/// </summary>
internal sealed class EmbeddedBroker(MqttConfiguration configuration, BrokerPass pass, ILogger<EmbeddedBroker> log) : IHostedService, IDisposable
{
    private MqttServer? _server;

    public async Task StartAsync(CancellationToken cancellationToken)
    {
        var options = new MqttServerOptionsBuilder()
            .WithDefaultEndpoint()
            .WithDefaultEndpointBoundIPAddress(IPAddress.Loopback)
            .WithDefaultEndpointBoundIPV6Address(IPAddress.None)
            .WithDefaultEndpointPort(configuration.Port)
            .Build();
        _server = new MqttServerFactory().CreateMqttServer(options, [new GuestNames(new MqttTcpServerAdapter())]);
        _server.ValidatingConnectionAsync += Admit;
        _server.InterceptingPublishAsync += Guard;
        try
        {
            await _server.StartAsync();
        }
        catch (SocketException e)
        {
            throw new StartException(ServiceCodes.BrokerPortUnusable, $"MQTT port {configuration.Port} cannot be used: {e.Message}.", "Stop the other broker, or choose another with --mqtt-port or mqtt.port.", e);
        }

        log.LogInformation("Embedded broker on {Address}:{Port}", IPAddress.Loopback, configuration.Port);
    }

    public Task StopAsync(CancellationToken cancellationToken) => _server?.StopAsync() ?? Task.CompletedTask;

    public void Dispose() => _server?.Dispose();

    private Task Admit(ValidatingConnectionEventArgs connection)
    {
        if (string.IsNullOrEmpty(connection.ClientId))
            connection.AssignedClientIdentifier = GuestNames.New();
        if (connection.ClientId == pass.ClientId && connection.Password != pass.Secret)
            connection.ReasonCode = MqttConnectReasonCode.NotAuthorized;
        return Task.CompletedTask;
    }

    private Task Guard(InterceptingPublishEventArgs publish)
    {
        if (publish.ClientId != pass.ClientId && publish.ApplicationMessage.Topic.StartsWith(MqttTopics.Root, StringComparison.Ordinal))
        {
            publish.ProcessPublish = false;
            publish.Response.ReasonCode = MqttPubAckReasonCode.NotAuthorized;
        }

        return Task.CompletedTask;
    }
}
