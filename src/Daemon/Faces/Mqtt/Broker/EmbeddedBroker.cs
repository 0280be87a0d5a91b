using System.Net;
using System.Net.Sockets;
using MQTTnet.Protocol;
using MQTTnet.Server;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Faces.Mqtt.Broker;

/// <summary>
/// A broker of the daemon's own, on loopback, for a bench that has none. Anybody on the machine may read; under <c>scalelink/</c> only the daemon may
/// publish, so that no other program can pass off loads as the bay's. Nobody can use it up: <see cref="BrokerLimits"/>.
/// </summary>
internal sealed class EmbeddedBroker(MqttConfiguration configuration, BrokerPass pass, BrokerCounts counts, TimeProvider time, ILogger<EmbeddedBroker> log) : IHostedService, IDisposable
{
    private readonly ClientList _clients = new(counts);
    private readonly GuestRules _rules = new(counts);
    private MqttServer? _server;

    public async Task StartAsync(CancellationToken cancellationToken)
    {
        var options = new MqttServerOptionsBuilder()
            .WithoutDefaultEndpoint()
            .WithMaxPendingMessagesPerClient(BrokerLimits.PendingMessages)
            .WithPendingMessagesOverflowStrategy(MqttPendingMessagesOverflowStrategy.DropOldestQueuedMessage)
            .Build();
        _server = new MqttServerFactory().CreateMqttServer(options, [new LoopbackListener(configuration.Port, _clients, counts, time, log)]);
        _server.ValidatingConnectionAsync += Admit;
        _server.InterceptingPublishAsync += Guard;
        _server.InterceptingSubscriptionAsync += Subscribe;
        _server.ClientUnsubscribedTopicAsync += Unsubscribed;
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
        var client = (ClientAdapter)connection.ChannelAdapter;
        if (string.IsNullOrEmpty(connection.ClientId))
            connection.AssignedClientIdentifier = ClientAdapter.NewName();
        if (connection.ClientId != pass.ClientId)
        {
            if (!_clients.Admit(client))
                connection.ReasonCode = MqttConnectReasonCode.ServerBusy;
        }
        else if (connection.Password == pass.Secret)
        {
            _clients.AdmitOwn(client);
            client.TakeOwnPackets();
        }
        else
        {
            connection.ReasonCode = MqttConnectReasonCode.NotAuthorized;
        }

        return Task.CompletedTask;
    }

    private Task Guard(InterceptingPublishEventArgs publish)
    {
        if (publish.ClientId == pass.ClientId || !publish.ProcessPublish)
            return Task.CompletedTask;
        var verdict = _rules.Judge(publish.ApplicationMessage);
        if (verdict != MqttPubAckReasonCode.Success)
            (publish.ProcessPublish, publish.Response.ReasonCode) = (false, verdict);
        return Task.CompletedTask;
    }

    private Task Subscribe(InterceptingSubscriptionEventArgs wish)
    {
        // Sessions end with their connection, so nothing would be sent a second time; and what a reader never acknowledges the server would keep for ever.
        wish.Response.ReasonCode = MqttSubscribeReasonCode.GrantedQoS0;
        // The one failure that both versions know (MQTT 3.1.1, section 3.9.3; MQTT 5.0, section 3.9.3).
        if (!_rules.Subscribes(wish))
            (wish.ProcessSubscription, wish.Response.ReasonCode) = (false, MqttSubscribeReasonCode.UnspecifiedError);
        return Task.CompletedTask;
    }

    private Task Unsubscribed(ClientUnsubscribedTopicEventArgs end)
    {
        GuestRules.Unsubscribed(end);
        return Task.CompletedTask;
    }
}
