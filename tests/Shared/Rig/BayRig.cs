using System.Text;
using System.Text.Json.Nodes;
using ScaleLink.Api.V1;

namespace Shared.Rig;

/// <summary>A whole bay: simulator, pseudo-terminals, daemon, on free ports and in a folder of its own.</summary>
internal sealed class BayRig : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-bay-");

    private readonly bool _isTextChecked;
    private readonly int _replyMs;
    private readonly string _mqtt;
    private readonly IReadOnlyList<string> _through;

    public BayRig(
        string imperfections = "none", int rate = 80, int seed = 1, string mqtt = "broker = \"embedded\"",
        string speak = "pad-frames", string tilt = "own", bool isTextChecked = true, int replyMs = PadBlocks.PatientReplyMs,
        IReadOnlyList<string>? through = null)
    {
        (_isTextChecked, _mqtt, _replyMs, _through) = (isTextChecked, mqtt, replyMs, through ?? []);
        (PagePort, GrpcPort, MqttPort) = (FreePorts.Next(), FreePorts.Next(), FreePorts.Next());
        Simulator = new Simulator(Path.Combine(_folder.FullName, "ports"), imperfections, rate, seed, speak: speak, tilt: tilt);
        File.WriteAllText(BayFile, Describe());
        Daemon = new DaemonProcess(_through, BayFile, GrpcPort);
    }

    public int PagePort { get; }

    public int GrpcPort { get; }

    public int MqttPort { get; }

    public string BayFile => Path.Combine(_folder.FullName, "bay.toml");

    public Simulator Simulator { get; }

    public DaemonProcess Daemon { get; private set; }

    /// <summary>Starts the daemon again, after it was ended.</summary>
    public void RestartDaemon()
    {
        Daemon.Dispose();
        Daemon = new DaemonProcess(_through, BayFile, GrpcPort);
    }

    /// <summary>How many places the pads have been carried on from where they stood at first, 0 to 3.</summary>
    public int PlacesMoved { get; private set; }

    /// <summary>Carries every empty pad on by some places. The bay file names the pads, so its blocks follow them and the daemon starts again.</summary>
    public void MovePads(int places)
    {
        Simulator.Do($$"""{"do":"move-pads","places":{{places}}}""");
        PlacesMoved = (PlacesMoved + places) % Simulator.Corners.Length;
        File.WriteAllText(BayFile, Describe());
        RestartDaemon();
        WaitLive();
    }

    /// <summary>All four pads live.</summary>
    public void WaitLive() => Wait.Until(() => Daemon.Pads.ListPads(new ListPadsRequest()).Pads.All(p => p.State == PadState.Live), Wait.Patience, "all pads live");

    /// <summary>Empty pads zeroed.</summary>
    public void Zero()
    {
        WaitLive();
        Wait.Until(() => Daemon.Control.ZeroPads(new ZeroPadsRequest { Who = "test" }).Results.All(r => r.Zero is not null), Wait.Patience, "pads zeroed");
    }

    /// <summary>Zero, car down, and still.</summary>
    public void PutCarOn(bool settle = true)
    {
        Zero();
        Simulator.DoAndWait("""{"do":"lower"}""");
        if (settle)
            Simulator.DoAndWait("""{"do":"settle","seconds":2}""");
    }

    /// <summary>Loads once settled for the record.</summary>
    public Loads Settled()
    {
        Loads? loads = null;
        Wait.Until(() => (loads = Daemon.Loads())?.WeighingReady == true, Wait.Patience, () => $"settled; last {loads}");
        return loads!;
    }

    public void Dispose()
    {
        Daemon.Dispose();
        Simulator.Dispose();
        KeptLedgers.Keep(Path.Combine(_folder.FullName, "ledger.db"), _folder.Name);
        _folder.Delete(recursive: true);
    }

    private string Describe()
    {
        var text = new StringBuilder($"""
            bay = "unit6"
            [listen]
            page_port = {PagePort}
            grpc_port = {GrpcPort}
            [mqtt]
            {_mqtt}
            port = {MqttPort}
            [target]
            cross_weight_percent = 50.0
            [ledger]
            path = "ledger.db"

            """);
        var placed = Placed();
        foreach (var corner in Simulator.Corners)
            text.AppendLine(PadBlocks.Of(placed, corner, _isTextChecked, _replyMs));
        return text.ToString();
    }

    // A cable belongs to its corner; number and starting value go with the pad.
    private JsonNode Placed()
    {
        var placed = Simulator.Ready.DeepClone();
        foreach (var (i, corner) in Simulator.Corners.Index())
        {
            var came = Simulator.Corners[(i + PlacesMoved) % Simulator.Corners.Length];
            foreach (var what in (string[])["serials", "kg_per_count"])
                placed[what]![corner] = Simulator.Ready[what]![came]?.DeepClone();
        }

        return placed;
    }
}
