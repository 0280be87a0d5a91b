using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using System.Text;
using CarOnPads.Bench;
using CarOnPads.Runtime;

namespace CarOnPads.Control;

/// <summary>
/// The control channel: TCP on loopback, one JSON object a line, one reply a line. Commands wait in a queue until the
/// thread that owns the bay takes them.
/// </summary>
sealed class ControlServer : IAsyncDisposable
{
    const int LongestLine = 65536;
    readonly TcpListener _listener;
    readonly CancellationTokenSource _end = new();
    readonly ConcurrentQueue<Request> _requests = new();
    readonly ConcurrentDictionary<Task, byte> _callers = new();
    readonly Task _accepting;

    /// <summary>Listens; port 0 takes a free one.</summary>
    /// <exception cref="SimulatorException">CP-304 the port is taken.</exception>
    public ControlServer(int port)
    {
        _listener = new TcpListener(IPAddress.Loopback, port);
        try
        {
            _listener.Start();
        }
        catch (SocketException e)
        {
            throw new SimulatorException("CP-304", $"The control port {port} cannot be opened: {e.Message}", "Choose another port, or 0 for a free one.");
        }

        _accepting = Task.Run(AcceptAsync);
    }

    /// <summary>Where it listens, <c>127.0.0.1:PORT</c>.</summary>
    public string Address => _listener.LocalEndpoint.ToString()!;

    /// <summary>Does what has been asked since the last call. For the thread that owns the bay.</summary>
    public void Serve(Bay bay)
    {
        while (_requests.TryDequeue(out var request))
            request.Reply.SetResult(Conversation.Answer(bay, request.Line));
    }

    /// <summary>Stops listening and lets every caller go.</summary>
    public async ValueTask DisposeAsync()
    {
        await _end.CancelAsync();
        _listener.Stop();
        await Task.WhenAll([_accepting, .. _callers.Keys]);
        _listener.Dispose();
        _end.Dispose();
    }

    async Task AcceptAsync()
    {
        while (!_end.IsCancellationRequested)
        {
            try
            {
                var caller = await _listener.AcceptTcpClientAsync(_end.Token);
                var talk = TalkAsync(caller);
                _callers[talk] = 0;
                _ = talk.ContinueWith(t => _callers.TryRemove(t, out _), TaskScheduler.Default);
            }
            catch (Exception e) when (e is OperationCanceledException or SocketException or ObjectDisposedException)
            {
                return;
            }
        }
    }

    async Task TalkAsync(TcpClient caller)
    {
        using var client = caller;
        client.NoDelay = true;
        var lines = new LineReader(client.GetStream(), LongestLine);
        try
        {
            while (await lines.ReadAsync(_end.Token) is { } line)
            {
                if (line.Length == 0)
                    continue;
                var request = new Request(line, new TaskCompletionSource<string>(TaskCreationOptions.RunContinuationsAsynchronously));
                _requests.Enqueue(request);
                var reply = await request.Reply.Task.WaitAsync(_end.Token);
                await client.GetStream().WriteAsync(Encoding.UTF8.GetBytes(reply + "\n"), _end.Token);
            }
        }
        catch (Exception e) when (e is IOException or OperationCanceledException or InvalidDataException)
        {
            // The caller went away, spoke no lines, or the program ends: nobody is left to tell.
        }
    }

    sealed record Request(string Line, TaskCompletionSource<string> Reply);
}
