using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;

namespace Shared.Rig;

/// <summary>A cable between a reader and the daemon: bytes pass both ways until it is cut. A cut cable says nothing to either side, as a real one.</summary>
internal sealed class Relay : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _end = new();
    private readonly ConcurrentBag<TcpClient> _clients = [];
    private readonly int _to;
    private readonly Task _accepting;
    private volatile TaskCompletionSource _joined = Joined();
    private volatile bool _answersAreLost;

    public Relay(int to)
    {
        _to = to;
        _listener.Start();
        Port = ((IPEndPoint)_listener.LocalEndpoint).Port;
        _accepting = Accept();
    }

    public int Port { get; }

    public void Cut() => _joined = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>What the daemon answers is lost from now on, until the ends are joined again; what it is asked still comes through.</summary>
    public void LoseAnswers() => _answersAreLost = true;

    /// <summary>Joins the ends again. What was under way in the cut is lost with its connection.</summary>
    public void Join()
    {
        while (_clients.TryTake(out var client))
            client.Dispose();
        _answersAreLost = false;
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

    private async Task Carry(TcpClient reader)
    {
        var daemon = new TcpClient();
        _clients.Add(reader);
        _clients.Add(daemon);
        try
        {
            await _joined.Task.WaitAsync(_end.Token);
            await daemon.ConnectAsync(IPAddress.Loopback, _to, _end.Token);
            await Task.WhenAny(Pass(reader.GetStream(), daemon.GetStream(), () => false), Pass(daemon.GetStream(), reader.GetStream(), () => _answersAreLost));
        }
        catch (Exception e) when (e is IOException or SocketException or ObjectDisposedException or InvalidOperationException or OperationCanceledException)
        {
            // One side went away: so does the other.
        }

        reader.Dispose();
        daemon.Dispose();
    }

    private async Task Pass(NetworkStream from, NetworkStream to, Func<bool> isLost)
    {
        var buffer = new byte[16384];
        while (await from.ReadAsync(buffer, _end.Token) is > 0 and var count)
        {
            await _joined.Task.WaitAsync(_end.Token);
            if (!isLost())
                await to.WriteAsync(buffer.AsMemory(0, count), _end.Token);
        }
    }
}
