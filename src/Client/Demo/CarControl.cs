using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Demo;

/// <summary>The crew's hands: asks the simulator to do something to the car. Reads nothing of its truth.</summary>
internal sealed class CarControl : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);
    private readonly TcpClient _client;
    private readonly StreamReader _replies;
    private readonly StreamWriter _commands;
    private readonly TimeProvider _time;

    private CarControl(TcpClient client, TimeProvider time)
    {
        (_client, _time) = (client, time);
        _replies = new StreamReader(client.GetStream(), Encoding.UTF8);
        _commands = new StreamWriter(client.GetStream(), new UTF8Encoding(false)) { AutoFlush = true, NewLine = "\n" };
    }

    public static async Task<CarControl> Connect(string address, TimeProvider time, CancellationToken stop)
    {
        var client = new TcpClient { NoDelay = true };
        try
        {
            await client.ConnectAsync(IPEndPoint.Parse(address), stop);
            return new CarControl(client, time);
        }
        catch (Exception e) when (e is SocketException or FormatException)
        {
            client.Dispose();
            throw Lost(e);
        }
    }

    /// <summary>Takes the jacks away. Returns how long it takes.</summary>
    public Task<TimeSpan> Lower(CancellationToken stop) => Do(new JsonObject { ["do"] = "lower" }, stop);

    /// <summary>Settles the car: by bouncing it, or by rolling it on its pads first.</summary>
    public Task<TimeSpan> Settle(double seconds, bool roll, CancellationToken stop) =>
        Do(new JsonObject { ["do"] = "settle", ["by"] = roll ? "both" : "bounce", ["seconds"] = seconds }, stop);

    /// <summary>Turns one perch; positive raises the corner.</summary>
    public Task<TimeSpan> Turn(string corner, double turns, CancellationToken stop) =>
        Do(new JsonObject { ["do"] = "turn", ["corner"] = corner, ["turns"] = turns }, stop);

    public void Dispose()
    {
        _commands.Dispose();
        _replies.Dispose();
        _client.Dispose();
    }

    /// <summary>Anything that the simulator's control channel offers. Returns how long it takes.</summary>
    internal async Task<TimeSpan> Do(JsonObject command, CancellationToken stop)
    {
        try
        {
            await _commands.WriteLineAsync(command.ToJsonString().AsMemory(), stop);
            var reply = await _replies.ReadLineAsync(stop).AsTask().WaitAsync(Patience, _time, stop) ?? throw new IOException("the channel is closed");
            using var answer = JsonDocument.Parse(reply);
            return Duration(answer.RootElement);
        }
        catch (Exception e) when (e is IOException or SocketException or TimeoutException or JsonException)
        {
            throw Lost(e);
        }
    }

    private static TimeSpan Duration(JsonElement answer)
    {
        if (!answer.GetProperty("ok").GetBoolean())
        {
            string Field(string name) => PeerText.Clean(answer.GetProperty(name).GetString(), 200);
            throw new ClientException(new Diagnostic(DemoCodes.SimulatorRefused, $"The simulator refused ({Field("code")}): {Field("error")}", Field("remedy")));
        }

        return answer.TryGetProperty("done_at", out var done)
            ? TimeSpan.FromSeconds(Math.Max(0, done.GetDouble() - answer.GetProperty("t").GetDouble()))
            : TimeSpan.Zero;
    }

    private static ClientException Lost(Exception why) =>
        new(new Diagnostic(DemoCodes.SimulatorRefused, $"The simulator's control channel is lost: {why.Message}.", "Start the demo again."), why);
}
