using System.Net;
using System.Net.Sockets;
using ScaleLink.Client.Connection;

namespace ScaleLink.Client.Demo;

/// <summary>The three ports of the demo's daemon, all on loopback.</summary>
internal sealed record Ports(int Page, int Grpc, int Mqtt)
{
    public static Ports Default { get; } = new(5480, 5481, 1883);

    /// <summary>Gives every 0 a free port, and finds a busy one before anything is started.</summary>
    /// <exception cref="ClientException">SL-430: a port is busy.</exception>
    public static Ports Choose(Ports wanted)
    {
        // All three are held open together, or the system might give one twice.
        using var page = Take(wanted.Page, "--page-port");
        using var grpc = Take(wanted.Grpc, "--grpc-port");
        using var mqtt = Take(wanted.Mqtt, "--mqtt-port");
        return new Ports(PortOf(page), PortOf(grpc), PortOf(mqtt));
    }

    private static int PortOf(TcpListener listener) => ((IPEndPoint)listener.LocalEndpoint).Port;

    private static TcpListener Take(int port, string option)
    {
        var listener = new TcpListener(IPAddress.Loopback, port);
        try
        {
            listener.Start();
            return listener;
        }
        catch (SocketException e)
        {
            listener.Dispose();
            throw new ClientException(new Diagnostic(DemoCodes.PortBusy, $"Port {port} cannot be used: {e.Message}.", $"Stop the program that has it, or give another with {option} (0 takes a free one)."), e);
        }
    }
}
