using Bay.Tests.Brokers;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.Replay;

/// <summary>A recorded scene played through pseudo-terminals into the real daemon, and everything that it publishes meanwhile.</summary>
internal sealed class ReplayBay : IDisposable
{
    /// <summary>Stands for the folder of the ports in a recorded bay file.</summary>
    public const string PortsMark = "{ports}";

    // A busy machine may be late with an answer; how late is no part of what was recorded.
    private const string RecordedTimeout = "reply_timeout_ms = 150", ReplayTimeout = "reply_timeout_ms = 400";

    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(60);
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-replay-");
    private readonly string _scene;
    private readonly StreamWatch<ListPadsResponse> _pads;
    private readonly StreamWatch<SampleBatch> _samples;
    private readonly StreamWatch<Loads> _loads;
    private readonly TopicReader _topics;
    private ChildProcess? _player;

    /// <summary>The daemon runs and is watched; its ports are not there yet, so that it misses nothing of what will be played.</summary>
    public ReplayBay(string scene, string? ledger, (string From, string To)? edit = null)
    {
        _scene = scene;
        if (ledger is not null)
            File.Copy(ledger, LedgerFile);
        var (grpc, mqtt) = (FreePorts.Next(), FreePorts.Next());
        var pads = File.ReadAllText(Path.Combine(SceneRecorder.Folder(scene), "pads.toml")).Replace(PortsMark, Ports).Replace(RecordedTimeout, ReplayTimeout);
        File.WriteAllText(BayFile, $"""
            bay = "unit6"
            [listen]
            page_port = {FreePorts.Next()}
            grpc_port = {grpc}
            [mqtt]
            port = {mqtt}
            [ledger]
            path = "ledger.db"

            {(edit is { } e ? pads.Replace(e.From, e.To) : pads)}
            """);
        Daemon = new DaemonProcess(BayFile, grpc, "--allow-missing");
        _pads = new(stop => Daemon.Pads.WatchPads(new WatchPadsRequest(), cancellationToken: stop));
        _samples = new(stop => Daemon.Feed.WatchSamples(new WatchSamplesRequest(), cancellationToken: stop));
        _loads = new(stop => Daemon.Feed.WatchLoads(new WatchLoadsRequest { RateHz = 20 }, cancellationToken: stop));
        Wait.Until(() => Answers(mqtt), Soon, "the broker answers");
        _topics = new TopicReader(mqtt);
        Wait.Until(() => _pads.Received.Count > 0 && _loads.Received.Count > 0, Soon, "the feeds run");
    }

    public DaemonProcess Daemon { get; }

    public string LedgerFile => Path.Combine(_folder.FullName, "ledger.db");

    public IReadOnlyList<ListPadsResponse> Pads => _pads.Received;

    public IReadOnlyList<SampleBatch> Samples => _samples.Received;

    public IReadOnlyList<Loads> Loads => _loads.Received;

    public TopicReader Topics => _topics;

    private string Ports => Path.Combine(_folder.FullName, "ports");

    private string BayFile => Path.Combine(_folder.FullName, "bay.toml");

    /// <summary>Begins to play.</summary>
    public void Play()
    {
        var files = Directory.GetFiles(SceneRecorder.Folder(_scene), "*.recording").Order();
        _player = new ChildProcess("CarOnPads", "car-on-pads.dll", ["--ports", Ports, "--exit-with-stdin", "--replay", .. files]);
        Assert.Contains("ready", _player.FirstLine(Soon));
    }

    /// <summary>Plays all of it, and waits until the end of it has been noticed.</summary>
    public void PlayToTheEnd()
    {
        Play();
        Assert.Contains("over", _player!.FirstLine(Soon));
        Wait.Until(() => Pads[^1].Pads.All(p => p.State != PadState.Live || p.Link.EndsWith("BUS", StringComparison.Ordinal)), Soon, () => $"the pads that speak by themselves have fallen silent; {Pads[^1]}");
    }

    public void Dispose()
    {
        _pads.Dispose();
        _samples.Dispose();
        _loads.Dispose();
        _topics.Dispose();
        _player?.Dispose();
        Daemon.Dispose();
        _folder.Delete(recursive: true);
    }

    private static bool Answers(int port)
    {
        try
        {
            using var client = new System.Net.Sockets.TcpClient("127.0.0.1", port);
            return true;
        }
        catch (System.Net.Sockets.SocketException)
        {
            return false;
        }
    }
}
