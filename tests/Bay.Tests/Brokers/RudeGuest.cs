using System.Net.Sockets;
using MQTTnet;
using MQTTnet.Protocol;

namespace Bay.Tests.Brokers;

/// <summary>A program on the same machine that would use the embedded broker up.</summary>
internal sealed class RudeGuest(int port) : IDisposable
{
    // MQTT 3.1.1, sections 2.2.3, 3.1 and 3.3: CONNECT with nothing but a clean session, and a PUBLISH of the longest packet there is.
    private static readonly byte[] Connect = [0x10, 0x0C, 0x00, 0x04, (byte)'M', (byte)'Q', (byte)'T', (byte)'T', 0x04, 0x02, 0x00, 0x00, 0x00, 0x00];
    private static readonly byte[] Promise = [0x30, 0xFF, 0xFF, 0xFF, 0x7F];

    private readonly List<TcpClient> _connections = [];

    /// <summary>Has so many messages retained, of so many bytes, each under a topic of its own; how many the broker said it would not keep.</summary>
    public async Task<int> Retain(int messages, int bytes)
    {
        using var client = new MqttClientFactory().CreateMqttClient();
        await client.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", port).WithProtocolVersion(MQTTnet.Formatter.MqttProtocolVersion.V500).Build());
        var (payload, refused) = (new byte[bytes], 0);
        for (var i = 0; i < messages; i++)
            if ((await client.PublishBinaryAsync($"litter/{i}", payload, MqttQualityOfServiceLevel.AtLeastOnce, retain: true)).ReasonCode == MqttClientPublishReasonCode.QuotaExceeded)
                refused++;
        return refused;
    }

    /// <summary>Promises a packet of 256 MB on so many connections and sends a little of it on each.</summary>
    public void PromiseTooMuch(int connections)
    {
        for (var i = 0; i < connections; i++)
        {
            var connection = new TcpClient("127.0.0.1", port);
            _connections.Add(connection);
            connection.GetStream().Write([.. Connect, .. Promise, .. new byte[100]]);
        }
    }

    public void Dispose() => _connections.ForEach(c => c.Dispose());
}
