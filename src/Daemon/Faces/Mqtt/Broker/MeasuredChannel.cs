using System.Buffers;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;
using MQTTnet.Channel;
using MQTTnet.Implementations;

namespace ScaleLink.Daemon.Faces.Mqtt.Broker;

/// <summary>
/// The bytes of one client. The library allocates what a header promises before it has come, so a packet that promises too much ends the connection here,
/// before the library hears of it.
/// </summary>
internal sealed class MeasuredChannel(Socket socket, BrokerCounts counts) : IMqttChannel
{
    private readonly MqttTcpChannel _inner = new(new NetworkStream(socket, ownsSocket: true), socket.LocalEndPoint, socket.RemoteEndPoint, null);
    private readonly PacketHeaders _headers = new();

    /// <summary>Bytes of the longest packet that is taken.</summary>
    public int LongestPacket { get; set; } = BrokerLimits.GuestPacket;

    public X509Certificate2 ClientCertificate => _inner.ClientCertificate;

    public EndPoint RemoteEndPoint => _inner.RemoteEndPoint;

    public EndPoint LocalEndPoint => _inner.LocalEndPoint;

    public bool IsSecureConnection => _inner.IsSecureConnection;

    /// <summary>Whether the client has said something that was not read yet.</summary>
    public bool HasUnread()
    {
        try
        {
            return socket.Available > 0;
        }
        catch (Exception e) when (e is ObjectDisposedException or SocketException)
        {
            return false;
        }
    }

    public Task ConnectAsync(CancellationToken cancellationToken) => _inner.ConnectAsync(cancellationToken);

    public Task DisconnectAsync(CancellationToken cancellationToken) => _inner.DisconnectAsync(cancellationToken);

    public async Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken)
    {
        var read = await _inner.ReadAsync(buffer, offset, count, cancellationToken);
        if (_headers.Follow(buffer.AsSpan(offset, read), LongestPacket))
            return read;
        counts.RefusedPacket();
        Dispose();
        // What a channel says when its client has hung up.
        return 0;
    }

    public Task WriteAsync(ReadOnlySequence<byte> buffer, bool isEndOfPacket, CancellationToken cancellationToken) => _inner.WriteAsync(buffer, isEndOfPacket, cancellationToken);

    public void Dispose() => _inner.Dispose();
}
