using System.Net;
using System.Net.Sockets;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Demo;

namespace Client.Tests.Demo;

public class PortsTests
{
    [Fact]
    public void Free_ports_are_three_different_ones()
    {
        var ports = Ports.Choose(new Ports(0, 0, 0));
        Assert.Equal(3, new[] { ports.Page, ports.Grpc, ports.Mqtt }.Where(p => p > 0).Distinct().Count());
    }

    [Fact]
    public void A_busy_port_is_told_with_the_option_that_moves_it()
    {
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();
        var busy = ((IPEndPoint)other.LocalEndpoint).Port;
        var trouble = Assert.Throws<ClientException>(() => Ports.Choose(new Ports(0, 0, busy))).Diagnostic;
        Assert.Equal("SL-430", trouble.Code);
        Assert.Contains("--mqtt-port", trouble.Remedy);
        Assert.Contains($"{busy}", trouble.Message);
    }
}
