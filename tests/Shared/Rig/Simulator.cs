using System.Net.Sockets;
using System.Text.Json.Nodes;

namespace Shared.Rig;

/// <summary>The car on its pads, and the channel that tells its truth.</summary>
internal sealed class Simulator : IDisposable
{
    private static readonly TimeSpan StartWithin = TimeSpan.FromSeconds(90);
    private readonly Lock _gate = new();
    private readonly ChildProcess _process;
    private readonly TcpClient _client;
    private readonly StreamReader _reader;
    private readonly StreamWriter _writer;

    public Simulator(string folder, string imperfections = "none", int rate = 80, int seed = 1, string start = "raised", string speak = "pad-frames", string tilt = "own", params IReadOnlyList<string> further)
    {
        _process = new ChildProcess("CarOnPads", "car-on-pads.dll", ["--ports", folder, "--control", "0", "--seed", $"{seed}",
            "--imperfections", imperfections, "--rate", $"{rate}", "--start", start, "--speak", speak, "--tilt", tilt, "--exit-with-stdin", .. further]);
        Ready = JsonNode.Parse(_process.FirstLine(StartWithin))!;
        var control = Ready["control"]!.GetValue<string>().Split(':');
        _client = new TcpClient(control[0], int.Parse(control[1])) { ReceiveTimeout = (int)Wait.Patience.TotalMilliseconds };
        _reader = new StreamReader(_client.GetStream());
        _writer = new StreamWriter(_client.GetStream()) { AutoFlush = true };
    }

    public static string[] Corners { get; } = ["LF", "RF", "LR", "RR"];

    /// <summary>What it said when it was ready: ports, serial numbers, kg a count.</summary>
    public JsonNode Ready { get; }

    /// <summary>Gives an order and its reply.</summary>
    public JsonNode Do(string command)
    {
        string? line;
        lock (_gate)
        {
            _writer.WriteLine(command);
            line = _reader.ReadLine();
        }

        var reply = JsonNode.Parse(line ?? throw new IOException($"The simulator is gone. {_process.Said}"))!;
        Assert.True(reply["ok"]!.GetValue<bool>(), $"{command} -> {reply}");
        return reply;
    }

    /// <summary>Gives an order and waits until it has been carried out.</summary>
    public void DoAndWait(string command)
    {
        var reply = Do(command);
        var done = reply["done_at"]?.GetValue<double>() ?? 0;
        Wait.Until(() => Do("""{"do":"state"}""")["t"]!.GetValue<double>() >= done, Wait.Patience, command);
    }

    /// <summary>The true static loads, kg.</summary>
    public double[] TrueLoads()
    {
        var loads = Do("""{"do":"truth"}""")["loads_kg"]!;
        return [.. Corners.Select(c => loads[c]!.GetValue<double>())];
    }

    public void Dispose()
    {
        _client.Dispose();
        _process.Dispose();
    }
}
