using System.Net.Sockets;
using System.Text;

namespace Daemon.Tests.Faces.Mqtt.Broker;

/// <summary>Speaks MQTT byte by byte, as the standard writes it (MQTT 3.1.1, chapter 3), and waits for nothing by itself.</summary>
internal sealed class RawGuest(int port) : IDisposable
{
    private const byte Clean = 0x02;
    private const byte WithWill = 0x04;

    public static readonly byte[] Ping = [0xC0, 0x00];

    private readonly TcpClient _client = new("127.0.0.1", port) { ReceiveTimeout = 10_000 };

    public void Send(params byte[] bytes) => _client.GetStream().Write(bytes);

    /// <summary>CONNECT, and the return code of the answer.</summary>
    public byte Connect(ushort keepAlive = 0, string? willTopic = null, byte version = 4)
    {
        // None; earlier versions have no place for any.
        byte[] properties = version == 5 ? [0] : [];
        byte[] will = willTopic is null ? [] : [.. properties, .. Text(willTopic), .. Text("gone")];
        byte[] body = [.. Text("MQTT"), version, (byte)(Clean | (will.Length > 0 ? WithWill : 0)), (byte)(keepAlive >> 8), (byte)keepAlive, .. properties, .. Text(""), .. will];
        Send([0x10, (byte)body.Length, .. body]);
        return Receive(out var answer) && answer.Type == 0x20 ? answer.Body[1] : throw new IOException("No answer.");
    }

    /// <summary>The next packet; false when the broker has hung up.</summary>
    public bool Receive(out (byte Type, byte[] Body) packet)
    {
        packet = (0, []);
        try
        {
            var head = new byte[2];
            _client.GetStream().ReadExactly(head);
            var body = new byte[head[1]];
            _client.GetStream().ReadExactly(body);
            packet = (head[0], body);
            return true;
        }
        catch (Exception e) when (e is EndOfStreamException or IOException { InnerException: SocketException { SocketErrorCode: SocketError.ConnectionReset } })
        {
            return false;
        }
    }

    public bool IsAnswered()
    {
        Send(Ping);
        return Receive(out var answer) && answer.Type == 0xD0;
    }

    public void Dispose() => _client.Dispose();

    private static byte[] Text(string text) => [(byte)(text.Length >> 8), (byte)text.Length, .. Encoding.ASCII.GetBytes(text)];
}
