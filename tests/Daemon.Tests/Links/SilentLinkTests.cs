using System.Net;
using System.Net.Sockets;
using Microsoft.Extensions.Logging.Abstractions;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Links;
using ScaleLink.Daemon.Ports;
using ScaleLink.Daemon.Runtime;

namespace Daemon.Tests.Links;

/// <summary>A link over which nothing comes any more though it looks open.</summary>
public class SilentLinkTests
{
    private const long Second = Nanoseconds.PerSecond;

    [Fact]
    public void Nothing_for_so_long_ends_the_link_and_a_byte_begins_the_time_anew()
    {
        var limit = Limit();
        for (var t = 0L; t < 4; t++)
            Assert.Equal((t + 1) * Second, limit.Next(t * Second).AgainNs);
        limit.Received("x"u8, 4 * Second);
        for (var t = 5L; t < 9; t++)
            limit.Next(t * Second);
        Assert.Equal("SL-112", Assert.Throws<LinkEndedException>(() => limit.Next(9 * Second)).Diagnostic.Code);
    }

    [Fact]
    public void Time_during_which_the_daemon_was_held_up_does_not_count()
    {
        var limit = Limit();
        limit.Next(Second);
        limit.Next(3600 * Second);
        limit.Received("x"u8, 3600 * Second + 1);
        limit.Next(3601 * Second);
    }

    [Fact]
    public async Task A_device_server_that_lost_its_power_is_reached_again_though_its_connection_was_never_closed()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var source = new HeardSource();
        var address = new TcpAddress("127.0.0.1", ((IPEndPoint)listener.LocalEndpoint).Port);
        var supervisor = new LinkSupervisor(address, new LinkFactory(new PortLocks("unit6", TimeProvider.System, Directory.CreateTempSubdirectory().FullName)),
            () => new SilenceLimit(new ListeningConversation(new PadFrameProtocol(), source), TimeSpan.FromSeconds(1), address.Name), [source], new BayClock(TimeProvider.System), _ => { }, NullLogger.Instance);
        supervisor.Start();
        // The first connection gives some bytes and is then as good as dead, without a goodbye.
        using var dead = await listener.AcceptTcpClientAsync(TestContext.Current.CancellationToken).AsTask().WaitAsync(TimeSpan.FromSeconds(30), TestContext.Current.CancellationToken);
        dead.GetStream().Write("samples"u8);
        using var next = await listener.AcceptTcpClientAsync(TestContext.Current.CancellationToken).AsTask().WaitAsync(TimeSpan.FromSeconds(30), TestContext.Current.CancellationToken);
        next.GetStream().Write("samples"u8);
        supervisor.Dispose();
        // Who is silent is told so by his own pad: the link does not fail over it.
        Assert.DoesNotContain("SL-112", source.Told);
    }

    [Fact]
    public void A_server_that_turns_away_at_once_is_asked_less_and_less_often()
    {
        var backoff = new Backoff(new Random(1));
        var waits = Enumerable.Range(0, 12).Select(_ => backoff.Next(isTurnedAway: true).TotalSeconds).ToList();
        Assert.InRange(waits[0], 0.2, 0.3);
        Assert.InRange(waits[^1], 24, 36);
        Assert.InRange(backoff.Next(isTurnedAway: false).TotalSeconds, 1.2, 1.8);
        backoff.Reset();
        Assert.InRange(backoff.Next(isTurnedAway: false).TotalSeconds, 0.2, 0.3);
    }

    private static SilenceLimit Limit()
    {
        var limit = new SilenceLimit(new ListeningConversation(new PadFrameProtocol(), new HeardSource()), TimeSpan.FromSeconds(5), "tcp://pad:1");
        limit.Opened(0);
        return limit;
    }
}
