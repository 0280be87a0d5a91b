using System.Net;
using System.Net.Sockets;
using MQTTnet.Adapter;
using MQTTnet.Diagnostics.Logger;
using MQTTnet.Exceptions;
using MQTTnet.Server;

namespace ScaleLink.Daemon.Faces.Mqtt.Broker;

/// <summary>Takes connections of this machine and hands each to the server as a client whose packets are measured and whose silence is judged.</summary>
internal sealed class LoopbackListener(int port, ClientList clients, BrokerCounts counts, TimeProvider time, ILogger log) : IMqttServerAdapter
{
    // Nobody can be taken in: most likely there are no file handles left, and the next try would fail as well.
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);

    private readonly TcpListener _listener = new(IPAddress.Loopback, port);
    private readonly CancellationTokenSource _stop = new();
    private Task _accepting = Task.CompletedTask;

    public Func<IMqttChannelAdapter, Task> ClientHandler { get; set; } = _ => Task.CompletedTask;

    public Task StartAsync(MqttServerOptions options, IMqttNetLogger logger)
    {
        _listener.Start();
        _accepting = Accept(socket => new ClientAdapter(socket, options, logger, counts, time));
        return Task.CompletedTask;
    }

    public async Task StopAsync()
    {
        await _stop.CancelAsync();
        _listener.Stop();
        await _accepting;
    }

    public void Dispose()
    {
        _listener.Dispose();
        _stop.Dispose();
    }

    private async Task Accept(Func<Socket, ClientAdapter> adapt)
    {
        while (!_stop.IsCancellationRequested)
        {
            try
            {
                Take(await _listener.AcceptSocketAsync(_stop.Token), adapt);
            }
            catch (OperationCanceledException)
            {
                return;
            }
            catch (SocketException e)
            {
                log.LogWarning("The embedded broker cannot take a connection: {Reason}", e.Message);
                await Task.Delay(Pause, time, _stop.Token).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    // In the order in which they came; the oldest may have to give way.
    private void Take(Socket socket, Func<Socket, ClientAdapter> adapt)
    {
        ClientAdapter client;
        try
        {
            socket.NoDelay = true;
            client = adapt(socket);
        }
        catch (SocketException)
        {
            // It has left already.
            socket.Dispose();
            return;
        }

        clients.Came(client);
        _ = Task.Run(() => Serve(client));
    }

    private async Task Serve(ClientAdapter client)
    {
        try
        {
            await ClientHandler(client);
        }
        catch (Exception e) when (e is SocketException or IOException or ObjectDisposedException or OperationCanceledException or MqttCommunicationException)
        {
            // It left, or was ended.
        }
        finally
        {
            clients.Left(client);
            client.Dispose();
        }
    }
}
