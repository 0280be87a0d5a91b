using System.Net.Sockets;
using ScaleLink.Daemon.Ports;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Links;

/// <summary>A TCP connection to a device server.</summary>
internal sealed class TcpLink : ILink
{
    private static readonly TimeSpan ConnectWithin = TimeSpan.FromSeconds(2);

    private readonly Socket _socket;
    private readonly string _name;

    private TcpLink(Socket socket, string name) => (_socket, _name) = (socket, name);

    /// <summary>Connects, or says why not.</summary>
    public static TcpLink Open(TcpAddress address)
    {
        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        try
        {
            var host = address.Host.Trim('[', ']');
            if (!socket.ConnectAsync(host, address.Port).Wait(ConnectWithin))
                throw new TimeoutException($"no answer within {ConnectWithin.TotalSeconds:0} s.");
            KeepAlive(socket);
            return new TcpLink(socket, address.Name);
        }
        catch (Exception e) when (e is SocketException or AggregateException or TimeoutException)
        {
            socket.Dispose();
            throw new LinkEndedException(LinkDiagnostics.Unreachable(address.Name, (e.InnerException ?? e).Message), e);
        }
    }

    // An end that lost its power is found out by the system within some 8 s, and by the limit of silence besides.
    private static void KeepAlive(Socket socket)
    {
        socket.SetSocketOption(SocketOptionLevel.Socket, SocketOptionName.KeepAlive, true);
        socket.SetSocketOption(SocketOptionLevel.Tcp, SocketOptionName.TcpKeepAliveTime, 5);
        socket.SetSocketOption(SocketOptionLevel.Tcp, SocketOptionName.TcpKeepAliveInterval, 1);
        socket.SetSocketOption(SocketOptionLevel.Tcp, SocketOptionName.TcpKeepAliveRetryCount, 3);
    }

    /// <inheritdoc/>
    public int Read(byte[] buffer, int offset, int count)
    {
        try
        {
            var read = _socket.Receive(buffer, offset, count, SocketFlags.None);
            return read > 0 ? read : throw new LinkEndedException(LinkDiagnostics.HungUp(_name));
        }
        catch (Exception e) when (e is SocketException or ObjectDisposedException)
        {
            throw new LinkEndedException(LinkDiagnostics.HungUp(_name), e);
        }
    }

    /// <inheritdoc/>
    public void Write(ReadOnlySpan<byte> bytes)
    {
        try
        {
            _socket.Send(bytes);
        }
        catch (Exception e) when (e is SocketException or ObjectDisposedException)
        {
            throw new LinkEndedException(LinkDiagnostics.HungUp(_name), e);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _socket.Dispose();
}
