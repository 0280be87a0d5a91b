using System.Net;
using System.Net.Sockets;

namespace Shared.Rig;

/// <summary>
/// Ports for daemons that are ended and started again. Below the range from which Linux gives a port to whoever connects: there a client
/// that calls while its daemon is down can be given the daemon's own port, is then connected to itself, and the daemon finds it in use.
/// </summary>
internal static class FreePorts
{
    private const int Lowest = 20_000;
    private const int Highest = 32_000;

    private static int _last = Random.Shared.Next(Lowest, Highest);

    public static int Next()
    {
        for (var tries = 0; tries < Highest - Lowest; tries++)
        {
            var port = Lowest + Interlocked.Increment(ref _last) % (Highest - Lowest);
            if (IsFree(port))
                return port;
        }

        throw new InvalidOperationException($"No port from {Lowest} to {Highest} is free.");
    }

    private static bool IsFree(int port)
    {
        try
        {
            using var listener = new TcpListener(IPAddress.Loopback, port);
            listener.Start();
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
