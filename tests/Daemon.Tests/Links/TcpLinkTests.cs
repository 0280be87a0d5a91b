using System.Net;
using System.Net.Sockets;
using ScaleLink.Daemon.Links;
using ScaleLink.Daemon.Ports;
using ScaleLink.Daemon.Runtime;

namespace Daemon.Tests.Links;

public class TcpLinkTests
{
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(30);

    [Fact]
    public async Task Bytes_go_both_ways_and_the_end_is_a_fault()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        using var link = TcpLink.Open(new TcpAddress("127.0.0.1", ((IPEndPoint)listener.LocalEndpoint).Port));
        using var peer = listener.AcceptTcpClient();
        link.Write("ask"u8);
        var buffer = new byte[16];
        Assert.Equal(3, peer.GetStream().Read(buffer));
        peer.GetStream().Write("answer"u8);
        Assert.Equal(6, link.Read(buffer, 0, buffer.Length));
        var read = Task.Run(() => Assert.Throws<LinkEndedException>(() => link.Read(buffer, 0, buffer.Length)).Diagnostic.Code);
        peer.Close();
        Assert.Equal("SL-105", await read.WaitAsync(Soon));
    }

    [Fact]
    public void A_server_that_is_not_there_is_named()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var port = ((IPEndPoint)listener.LocalEndpoint).Port;
        listener.Stop();
        var fault = Assert.Throws<LinkEndedException>(() => TcpLink.Open(new TcpAddress("127.0.0.1", port))).Diagnostic;
        Assert.Equal("SL-107", fault.Code);
        Assert.Contains($"{port}", fault.Message);
    }
}
