using System.Collections.Concurrent;
using System.Text;
using System.Text.Json.Nodes;
using MQTTnet;

namespace Bay.Tests.Brokers;

/// <summary>A reader of topics through a real broker.</summary>
internal sealed class TopicReader : IDisposable
{
    private readonly IMqttClient _client = new MqttClientFactory().CreateMqttClient();
    private readonly ConcurrentQueue<(string Topic, bool Retained, JsonNode Payload)> _received = new();

    public TopicReader(int port, string filter = "scalelink/#")
    {
        _client.ApplicationMessageReceivedAsync += e =>
        {
            _received.Enqueue((e.ApplicationMessage.Topic, e.ApplicationMessage.Retain, JsonNode.Parse(Encoding.UTF8.GetString(e.ApplicationMessage.Payload))!));
            return Task.CompletedTask;
        };
        _client.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", port).Build()).GetAwaiter().GetResult();
        _client.SubscribeAsync(filter).GetAwaiter().GetResult();
    }

    public IReadOnlyList<(string Topic, bool Retained, JsonNode Payload)> Received => [.. _received];

    /// <summary>Never again once the broker has thrown it out: it does not come back by itself.</summary>
    public bool IsConnected => _client.IsConnected;

    public JsonNode? Newest(string topic) => _received.LastOrDefault(r => r.Topic == topic).Payload;

    public void Dispose() => _client.Dispose();
}
