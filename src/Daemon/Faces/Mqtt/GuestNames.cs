using MQTTnet.Adapter;
using MQTTnet.Diagnostics.Logger;
using MQTTnet.Formatter;
using MQTTnet.Server;

namespace ScaleLink.Daemon.Faces.Mqtt;

/// <summary>
/// Lets in clients that leave their name empty. MQTT 3.1.1 (section 3.1.3.1) has the server name them; this server only does so for MQTT 5
/// and turns the others away, so the name is written in before it looks.
/// </summary>
internal sealed class GuestNames(IMqttServerAdapter inner) : IMqttServerAdapter
{
    public Func<IMqttChannelAdapter, Task> ClientHandler
    {
        get => inner.ClientHandler;
        set => inner.ClientHandler = channel => value(new NamingChannel(channel));
    }

    /// <summary>A name that no other client has.</summary>
    public static string New() => $"guest-{Guid.NewGuid():N}";

    public Task StartAsync(MqttServerOptions options, IMqttNetLogger logger) => inner.StartAsync(options, logger);

    public Task StopAsync() => inner.StopAsync();

    public void Dispose() => inner.Dispose();

    private sealed class NamingChannel(IMqttChannelAdapter inner) : IMqttChannelAdapter
    {
        public long BytesReceived => inner.BytesReceived;

        public long BytesSent => inner.BytesSent;

        public System.Security.Cryptography.X509Certificates.X509Certificate2 ClientCertificate => inner.ClientCertificate;

        public System.Net.EndPoint RemoteEndPoint => inner.RemoteEndPoint;

        public System.Net.EndPoint LocalEndPoint => inner.LocalEndPoint;

        public bool IsSecureConnection => inner.IsSecureConnection;

        public MqttPacketFormatterAdapter PacketFormatterAdapter => inner.PacketFormatterAdapter;

        public Task ConnectAsync(CancellationToken cancellationToken) => inner.ConnectAsync(cancellationToken);

        public Task DisconnectAsync(CancellationToken cancellationToken) => inner.DisconnectAsync(cancellationToken);

        public async Task<MQTTnet.Packets.MqttPacket> ReceivePacketAsync(CancellationToken cancellationToken)
        {
            var packet = await inner.ReceivePacketAsync(cancellationToken);
            if (packet is MQTTnet.Packets.MqttConnectPacket { ClientId: null or "" } connect && inner.PacketFormatterAdapter.ProtocolVersion != MqttProtocolVersion.V500)
                connect.ClientId = New();
            return packet;
        }

        public void ResetStatistics() => inner.ResetStatistics();

        public Task SendPacketAsync(MQTTnet.Packets.MqttPacket packet, CancellationToken cancellationToken) => inner.SendPacketAsync(packet, cancellationToken);

        public void Dispose() => inner.Dispose();
    }
}
