using System.Text;
using ScaleLink.Api.V1;

namespace Shared.Rig;

/// <summary>A whole bay: simulator, pseudo-terminals, daemon, on free ports and in a folder of its own.</summary>
internal sealed class BayRig : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-bay-");

    private readonly bool _isTextChecked;

    public BayRig(
        string imperfections = "none", int rate = 80, int seed = 1, string mqtt = "broker = \"embedded\"",
        string speak = "pad-frames", string tilt = "own", bool isTextChecked = true)
    {
        _isTextChecked = isTextChecked;
        (PagePort, GrpcPort, MqttPort) = (FreePorts.Next(), FreePorts.Next(), FreePorts.Next());
        Simulator = new Simulator(Path.Combine(_folder.FullName, "ports"), imperfections, rate, seed, speak: speak, tilt: tilt);
        File.WriteAllText(BayFile, Describe(mqtt));
        Daemon = new DaemonProcess(BayFile, GrpcPort);
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
        Daemon = new DaemonProcess(BayFile, GrpcPort);
    }

    /// <summary>All four pads live.</summary>
    public void WaitLive() => Wait.Until(() => Daemon.Pads.ListPads(new ListPadsRequest()).Pads.All(p => p.State == PadState.Live), TimeSpan.FromSeconds(20), "all pads live");

    /// <summary>Empty pads zeroed.</summary>
    public void Zero()
    {
        WaitLive();
        Wait.Until(() => Daemon.Control.ZeroPads(new ZeroPadsRequest { Who = "test" }).Results.All(r => r.Zero is not null), TimeSpan.FromSeconds(10), "pads zeroed");
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
    public Loads Settled(double withinSeconds = 30)
    {
        Loads? loads = null;
        Wait.Until(() => (loads = Daemon.Loads())?.CaptureReady == true, TimeSpan.FromSeconds(withinSeconds), () => $"settled; last {loads}");
        return loads!;
    }

    public void Dispose()
    {
        Daemon.Dispose();
        Simulator.Dispose();
        _folder.Delete(recursive: true);
    }

    private string Describe(string mqtt)
    {
        var text = new StringBuilder($"""
            bay = "unit6"
            [listen]
            page_port = {PagePort}
            grpc_port = {GrpcPort}
            [mqtt]
            {mqtt}
            port = {MqttPort}
            [target]
            cross_weight_percent = 50.0
            [ledger]
            path = "ledger.db"

            """);
        foreach (var corner in Simulator.Corners)
            text.AppendLine(PadBlocks.Of(Simulator.Ready, corner, _isTextChecked));
        return text.ToString();
    }
}
