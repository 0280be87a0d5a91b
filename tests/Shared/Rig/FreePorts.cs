using System.Net;
using System.Net.Sockets;

namespace Shared.Rig;

/// <summary>
/// Ports for daemons that are ended and started again. Below the range from which Linux gives a port to whoever connects: there a client
/// that calls while its daemon is down can be given the daemon's own port, is then connected to itself, and the daemon finds it in use.
/// Each test process keeps to a block of its own, so that another cannot take a port whose daemon is just down.
/// </summary>
internal static class FreePorts
{
    private const int Lowest = 20_000;
    private const int InBlock = 500;
    private const int Blocks = 24;

    // Held as long as the process runs.
    private static readonly FileStream Claim = Take();
    private static readonly int First = int.Parse(Path.GetFileName(Claim.Name));

    private static int _last;

    public static int Next()
    {
        for (var tries = 0; tries < InBlock; tries++)
        {
            var port = First + (Interlocked.Increment(ref _last) & int.MaxValue) % InBlock;
            if (IsFree(port))
                return port;
        }

        throw new InvalidOperationException($"None of the {InBlock} ports from {First} is free.");
    }

    private static FileStream Take()
    {
        var folder = Directory.CreateDirectory(Path.Combine(Path.GetTempPath(), "scalelink-test-ports")).FullName;
        for (var block = 0; block < Blocks; block++)
        {
            try
            {
                return new FileStream(Path.Combine(folder, $"{Lowest + block * InBlock}"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                // Another test process has it.
            }
        }

        throw new InvalidOperationException($"{Blocks} test processes run already.");
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
