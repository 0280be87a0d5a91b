using System.Net.Sockets;
using CarOnPads.Ports;

namespace CarOnPads.Tests.Ports;

public class TcpPortTests
{
    [Fact]
    public void Bytes_pass_both_ways()
    {
        using var port = new TcpPort(0);
        using var reader = Connect(port);
        Until(() => Sent(port, [1, 2, 3]));
        var buffer = new byte[16];
        Assert.Equal(3, reader.Receive(buffer));
        Assert.Equal([1, 2, 3], buffer[..3]);
        reader.Send([7, 0]);
        var heard = 0;
        Until(() => (heard = port.Read(buffer)) > 0);
        Assert.Equal([7, 0], buffer[..heard]);
    }

    [Fact]
    public void Without_a_reader_bytes_are_counted_as_lost()
    {
        using var port = new TcpPort(0);
        port.Write(new byte[10]);
        Assert.Equal(10, port.LostBytes);
    }

    [Fact]
    public void A_reader_that_does_not_read_never_blocks_the_writer()
    {
        using var port = new TcpPort(0);
        using var reader = Connect(port);
        for (var i = 0; i < 10_000; i++)
            port.Write(new byte[4096]);
        Assert.True(port.LostBytes > 10_000_000);
    }

    [Fact]
    public void A_second_caller_is_turned_away_while_the_first_is_there()
    {
        using var port = new TcpPort(0);
        using var first = Connect(port);
        Until(() => Sent(port, [1]));
        using var second = Connect(port);
        Until(() =>
        {
            port.Write([2]);
            return second.Poll(0, SelectMode.SelectRead);
        });
        Assert.Equal(0, second.Receive(new byte[1]));
    }

    [Fact]
    public void Pulling_hangs_up_and_replugging_listens_at_the_same_address()
    {
        using var port = new TcpPort(0);
        var address = port.Address;
        using var reader = Connect(port);
        Until(() => Sent(port, [1]));
        reader.Receive(new byte[1]);
        port.Unplug();
        Assert.Equal(0, reader.Receive(new byte[1]));
        Assert.False(port.Plugged);
        port.Replug();
        Assert.Equal(address, port.Address);
        using var again = Connect(port);
        Until(() => Sent(port, [5]));
    }

    static Socket Connect(TcpPort port)
    {
        var socket = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp) { ReceiveTimeout = 30_000 };
        socket.Connect("127.0.0.1", new Uri(port.Address).Port);
        return socket;
    }

    static bool Sent(TcpPort port, byte[] bytes)
    {
        var lost = port.LostBytes;
        port.Write(bytes);
        return port.LostBytes == lost;
    }

    // Loopback delivers soon, not at once.
    static void Until(Func<bool> condition) =>
        Assert.True(SpinWait.SpinUntil(condition, TimeSpan.FromSeconds(30)));
}
