using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;

namespace Board.Tests.Pages;

/// <summary>A cable between browser and daemon: bytes pass both ways until it is cut. A cut cable says nothing to either side, as a real one.</summary>
internal sealed class Relay : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _end = new();
    private readonly ConcurrentBag<TcpClient> _clients = [];
    private readonly int _to;
    private readonly Task _accepting;
    private volatile TaskCompletionSource _joined = Joined();

    public Relay(int to)
    {
        _to = to;
        _listener.Start();
        Port = ((IPEndPoint)_listener.LocalEndpoint).Port;
        _accepting = Accept();
    }

    public int Port { get; }

    public void Cut() => _joined = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Joins the ends again. What was under way in the cut is lost with its connection.</summary>
    public void Join()
    {
        while (_clients.TryTake(out var client))
            client.Dispose();
        _joined.TrySetResult();
    }

    public async ValueTask DisposeAsync()
    {
        await _end.CancelAsync();
        _listener.Stop();
        Join();
        await _accepting.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _end.Dispose();
    }

    private static TaskCompletionSource Joined()
    {
        var joined = new TaskCompletionSource();
        joined.SetResult();
        return joined;
    }

    private async Task Accept()
    {
        while (!_end.IsCancellationRequested)
            _ = Carry(await _listener.AcceptTcpClientAsync(_end.Token));
    }

    private async Task Carry(TcpClient browser)
    {
        var daemon = new TcpClient();
        _clients.Add(browser);
        _clients.Add(daemon);
        try
        {
            await _joined.Task.WaitAsync(_end.Token);
            await daemon.ConnectAsync(IPAddress.Loopback, _to, _end.Token);
            await Task.WhenAny(Pass(browser.GetStream(), daemon.GetStream()), Pass(daemon.GetStream(), browser.GetStream()));
        }
        catch (Exception e) when (e is IOException or SocketException or ObjectDisposedException or InvalidOperationException or OperationCanceledException)
        {
            // One side went away: so does the other.
        }

        browser.Dispose();
        daemon.Dispose();
    }

    private async Task Pass(NetworkStream from, NetworkStream to)
    {
        var buffer = new byte[16384];
        while (await from.ReadAsync(buffer, _end.Token) is > 0 and var count)
        {
            await _joined.Task.WaitAsync(_end.Token);
            await to.WriteAsync(buffer.AsMemory(0, count), _end.Token);
        }
    }
}
