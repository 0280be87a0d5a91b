using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;
using MQTTnet.Adapter;
using MQTTnet.Diagnostics.Logger;
using MQTTnet.Formatter;
using MQTTnet.Packets;
using MQTTnet.Server;

namespace ScaleLink.Daemon.Faces.Mqtt.Broker;

/// <summary>
/// The packets of one client, on their way to and from the server. Some are changed before it looks: a client that leaves its name empty gets one, since
/// MQTT 3.1.1 (section 3.1.3.1) has the server name it and this server only does so for MQTT 5; and the keep-alive is taken out, since it is judged here.
/// </summary>
internal sealed class ClientAdapter : IMqttChannelAdapter
{
    // MQTT 3.1.1, section 3.1.2.10: one and a half times the keep-alive without a packet.
    private const double Patience = 1.5;

    private readonly MeasuredChannel _channel;
    private readonly MqttChannelAdapter _inner;
    private readonly Silence _silence;
    private readonly BrokerCounts _counts;
    private bool _isIntroduced;

    public ClientAdapter(Socket socket, MqttServerOptions options, IMqttNetLogger logger, BrokerCounts counts, TimeProvider time)
    {
        _counts = counts;
        _channel = new MeasuredChannel(socket, counts);
        _inner = new MqttChannelAdapter(_channel, new MqttPacketFormatterAdapter(new MqttBufferWriter(options.WriterBufferSize, options.WriterBufferSizeMax)), logger);
        _silence = new Silence(time, _channel.HasUnread, EndSilent);
        _silence.Allow(BrokerLimits.IntroducedWithin);
    }

    public long BytesReceived => _inner.BytesReceived;

    public long BytesSent => _inner.BytesSent;

    public X509Certificate2 ClientCertificate => _inner.ClientCertificate;

    public EndPoint RemoteEndPoint => _inner.RemoteEndPoint;

    public EndPoint LocalEndPoint => _inner.LocalEndPoint;

    public bool IsSecureConnection => _inner.IsSecureConnection;

    public MqttPacketFormatterAdapter PacketFormatterAdapter => _inner.PacketFormatterAdapter;

    /// <summary>A name that no other client has.</summary>
    public static string NewName() => $"guest-{Guid.NewGuid():N}";

    /// <summary>Takes longer packets from now on: it is the daemon.</summary>
    public void TakeOwnPackets() => _channel.LongestPacket = BrokerLimits.OwnPacket;

    /// <summary>Ends the connection as if the network had failed, so that the client's will is published.</summary>
    public void Cut() => _channel.Dispose();

    public Task ConnectAsync(CancellationToken cancellationToken) => _inner.ConnectAsync(cancellationToken);

    public Task DisconnectAsync(CancellationToken cancellationToken) => _inner.DisconnectAsync(cancellationToken);

    public async Task<MqttPacket> ReceivePacketAsync(CancellationToken cancellationToken)
    {
        var packet = await _inner.ReceivePacketAsync(cancellationToken);
        if (packet is MqttConnectPacket connect)
            Introduce(connect);
        else
            _silence.Heard();
        // None were offered (MQTT 5.0, section 3.3.2.3.4); the server would keep 65 535 topics for each client.
        return packet is MqttPublishPacket { TopicAlias: not 0 } ? null! : packet;
    }

    public Task SendPacketAsync(MqttPacket packet, CancellationToken cancellationToken)
    {
        if (packet is MqttConnAckPacket answer)
            (answer.TopicAliasMaximum, answer.MaximumPacketSize) = (0, (uint)_channel.LongestPacket);
        return _inner.SendPacketAsync(packet, cancellationToken);
    }

    public void ResetStatistics() => _inner.ResetStatistics();

    public void Dispose()
    {
        _silence.Dispose();
        _inner.Dispose();
    }

    private void Introduce(MqttConnectPacket connect)
    {
        if (string.IsNullOrEmpty(connect.ClientId) && PacketFormatterAdapter.ProtocolVersion != MqttProtocolVersion.V500)
            connect.ClientId = NewName();
        _isIntroduced = true;
        _silence.Allow(connect.KeepAlivePeriod == 0 ? Timeout.InfiniteTimeSpan : TimeSpan.FromSeconds(connect.KeepAlivePeriod * Patience));
        connect.KeepAlivePeriod = 0;
    }

    private void EndSilent()
    {
        _counts.EndedSilent(_isIntroduced);
        Cut();
    }
}
