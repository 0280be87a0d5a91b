using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using MQTTnet;
using MQTTnet.Exceptions;
using MQTTnet.Formatter;
using MQTTnet.Protocol;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Faces.Mqtt.Broker;

namespace ScaleLink.Daemon.Faces.Mqtt;

/// <summary>One connection to a broker: used once; any failure ends it.</summary>
internal sealed class MqttConnection : IAsyncDisposable
{
    private static readonly TimeSpan Deadline = TimeSpan.FromSeconds(3);

    private readonly IMqttClient _client = new MqttClientFactory().CreateMqttClient();
    private readonly TimeProvider _time;

    private MqttConnection(TimeProvider time) => _time = time;

    /// <summary>Connects within a deadline, leaving <paramref name="will"/> with the broker.</summary>
    public static async Task<MqttConnection> Open(MqttConfiguration to, BrokerPass pass, string willTopic, byte[] will, TimeProvider time, CancellationToken stop)
    {
        var options = new MqttClientOptionsBuilder()
            .WithTcpServer(to.Host, to.Port)
            .WithClientId(pass.ClientId)
            .WithProtocolVersion(MqttProtocolVersion.V500)
            .WithCleanStart()
            .WithKeepAlivePeriod(TimeSpan.FromSeconds(10))
            .WithWillTopic(willTopic)
            .WithWillPayload(will)
            .WithWillRetain()
            .WithWillQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce);
        if (to.Broker == BrokerKind.Embedded)
            options.WithCredentials(pass.ClientId, pass.Secret);
        else if (to.User is { } user)
            options.WithCredentials(user, to.PasswordFile is { } file ? (await File.ReadAllTextAsync(file, stop)).Trim() : "");

        var connection = new MqttConnection(time);
        try
        {
            await connection.Within(token => connection._client.ConnectAsync(options.Build(), token), stop);
            return connection;
        }
        catch
        {
            await connection.DisposeAsync();
            throw;
        }
    }

    /// <summary>Sends a value that the broker keeps for those who come later.</summary>
    public Task Retain<T>(string topic, T payload, JsonTypeInfo<T> type, CancellationToken stop) => Within(token => _client.PublishAsync(
        new MqttApplicationMessageBuilder()
            .WithTopic(topic)
            .WithPayload(JsonSerializer.SerializeToUtf8Bytes(payload, type))
            .WithContentType("application/json")
            .WithRetainFlag()
            .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce)
            .Build(),
        token), stop);

    /// <summary>Sends a value that is worth nothing later: not kept, at most once, and dropped by the broker when it expires.</summary>
    public Task Stream<T>(string topic, T payload, JsonTypeInfo<T> type, double maxAgeSeconds, CancellationToken stop) => Within(token => _client.PublishAsync(
        new MqttApplicationMessageBuilder()
            .WithTopic(topic)
            .WithPayload(JsonSerializer.SerializeToUtf8Bytes(payload, type))
            .WithContentType("application/json")
            .WithMessageExpiryInterval((uint)Math.Ceiling(maxAgeSeconds))
            .Build(),
        token), stop);

    /// <summary>Asks the broker for an answer: a steady stream of unacknowledged messages hides a dead one.</summary>
    public Task Ping(CancellationToken stop) => Within(_client.PingAsync, stop);

    /// <summary>Says goodbye, so that the will is not sent.</summary>
    public Task Close() => Within(token => _client.DisconnectAsync(new MqttClientDisconnectOptions(), token), CancellationToken.None);

    public ValueTask DisposeAsync()
    {
        _client.Dispose();
        return ValueTask.CompletedTask;
    }

    // The client ignores its own timeout when it is handed a token, so the deadline is in the token.
    private async Task Within(Func<CancellationToken, Task> act, CancellationToken stop)
    {
        using var deadline = new CancellationTokenSource(Deadline, _time);
        using var both = CancellationTokenSource.CreateLinkedTokenSource(deadline.Token, stop);
        try
        {
            await act(both.Token);
        }
        catch (Exception e) when (e is OperationCanceledException or MqttCommunicationTimedOutException && !stop.IsCancellationRequested)
        {
            throw new TimeoutException($"no answer within {Deadline.TotalSeconds:0} s", e);
        }
    }
}
