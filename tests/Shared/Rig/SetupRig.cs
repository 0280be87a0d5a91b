using Grpc.Core;
using Grpc.Net.Client;
using ScaleLink.Api.V1;

namespace Shared.Rig;

/// <summary>Four pads nobody has described, a daemon without a bay file, and somebody who steps on pads.</summary>
internal sealed class SetupRig : IDisposable
{
    private const double PersonKg = 78;
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-setup-");

    private ChildProcess? _daemon;

    private readonly bool _ownsPads;

    /// <param name="speak">What the pads speak.</param>
    /// <param name="bayFile">Where the bay file is to be; nothing: in a folder of its own.</param>
    /// <param name="isDaemonStarted">False: somebody else starts it.</param>
    public SetupRig(string speak, string? bayFile = null, bool isDaemonStarted = true)
        : this(folder => new Simulator(Path.Combine(folder, "ports"), "default", speak: speak), bayFile, isDaemonStarted)
    {
        _ownsPads = true;
        Simulator.DoAndWait("""{"do":"jack","mm":150}""");
    }

    /// <summary>A second daemon, at the pads of another.</summary>
    public SetupRig(SetupRig beside)
        : this(_ => beside.Simulator, null, isDaemonStarted: true)
    {
    }

    private SetupRig(Func<string, Simulator> pads, string? bayFile, bool isDaemonStarted)
    {
        (PagePort, GrpcPort, MqttPort) = (FreePorts.Next(), FreePorts.Next(), FreePorts.Next());
        BayFile = bayFile ?? Path.Combine(_folder.FullName, "bay.toml");
        Simulator = pads(_folder.FullName);
        Channel = GrpcChannel.ForAddress($"http://127.0.0.1:{GrpcPort}");
        (Setup, Control) = (new ScaleLink.Api.V1.Setup.SetupClient(Channel), new SetupControl.SetupControlClient(Channel));
        if (!isDaemonStarted)
            return;
        StartDaemon();
        Wait.Until(() => TryNow() is not null, Wait.Patience, () => $"the daemon answers. {Daemon.Said}");
    }

    public int PagePort { get; }

    public int GrpcPort { get; }

    public int MqttPort { get; }

    public string BayFile { get; }

    public string Folder => _folder.FullName;

    public Simulator Simulator { get; }

    public ChildProcess Daemon => _daemon ?? throw new InvalidOperationException("No daemon was started here.");

    public GrpcChannel Channel { get; }

    public ScaleLink.Api.V1.Setup.SetupClient Setup { get; }

    public SetupControl.SetupControlClient Control { get; }

    public string Port(string corner) => $"{Simulator.Ready["ports"]![corner]}";

    /// <summary>The daemon dies without a goodbye, and is started again by the same words.</summary>
    public void KillAndStartAgain()
    {
        Daemon.Kill();
        Assert.True(Daemon.WaitForExit(Wait.Patience), "It is dead.");
        Daemon.Dispose();
        StartDaemon();
    }

    /// <summary>How far the setting up is.</summary>
    public SetupState Now() => TryNow() ?? throw new InvalidOperationException("The daemon does not set up.");

    /// <summary>Searches the four ports and waits until it is over.</summary>
    public SetupState Search()
    {
        Control.SearchDevices(new SearchDevicesRequest { Ports = { Simulator.Corners.Select(Port) }, Who = "Ada" });
        Wait.Until(() => Now().Awaiting != Corner.Unspecified, Wait.Patience, () => $"searched; {Now()}");
        return Now();
    }

    /// <summary>Has the bay file written.</summary>
    public WriteBayFileResponse Write(string bay, double? capacityKg)
    {
        var request = new WriteBayFileRequest { Bay = bay, Who = "Ada" };
        if (capacityKg is { } known)
            request.CapacityKg = known;
        return Control.WriteBayFile(request);
    }

    /// <summary>Says by hand which device stands under a corner.</summary>
    public void Place(string device, Corner corner) => Control.PlaceDevice(new PlaceDeviceRequest { Device = device, Corner = corner, Who = "Ada" });

    /// <summary>The daemon has gone over to the bay, and hears all four pads.</summary>
    public bool IsBayLive()
    {
        try
        {
            return new Pads.PadsClient(Channel).ListPads(new ListPadsRequest()).Pads is { Count: 4 } all && all.All(p => p.State == PadState.Live);
        }
        catch (RpcException)
        {
            return false;
        }
    }

    /// <summary>How often a pad was stepped on.</summary>
    public int Stepped { get; private set; }

    /// <summary>Puts a person on a pad, or takes one off.</summary>
    public void Step(string corner, bool on)
    {
        Stepped += on ? 1 : 0;
        Simulator.Do(FormattableString.Invariant($$"""{"do":"mass","corner":"{{corner}}","kg":{{(on ? PersonKg : 0)}},"x_mm":20,"y_mm":-15}"""));
    }

    /// <summary>Steps on a pad, stands until that is seen, and steps off.</summary>
    public void StandOn(string corner)
    {
        Wait.Until(() => Now().Devices.All(d => d.Ready), Wait.Patience, () => $"all are listened to; {Now()}");
        Step(corner, on: true);
        Wait.Until(() => Now().Devices.Any(d => d.Loaded), Wait.Patience, () => $"somebody is seen on {corner}; {Now()}");
        Thread.Sleep(1500);
        Step(corner, on: false);
        Wait.Until(() => Now().Devices.All(d => !d.Loaded), Wait.Patience, () => $"off {corner}; {Now()}");
    }

    public void Dispose()
    {
        Channel.Dispose();
        _daemon?.Dispose();
        if (_ownsPads)
            Simulator.Dispose();
        // A daemon that somebody else has started may still be writing its last.
        Wait.Until(TryDelete, Wait.Patience, () => $"{_folder} goes");
    }

    private bool TryDelete()
    {
        try
        {
            _folder.Delete(recursive: true);
            return true;
        }
        catch (IOException) when (_folder.Exists)
        {
            return false;
        }
    }

    private void StartDaemon() => _daemon = new ChildProcess("ScaleLink.Daemon", "scalelinkd.dll",
        ["--bay", BayFile, "--page-port", $"{PagePort}", "--grpc-port", $"{GrpcPort}", "--mqtt-port", $"{MqttPort}", "--exit-with-stdin"]);

    /// <summary>How far it is; nothing: it does not set up, or not yet.</summary>
    public SetupState? TryNow()
    {
        try
        {
            using var stream = Setup.WatchSetup(new WatchSetupRequest(), deadline: DateTime.UtcNow.AddSeconds(10));
            return stream.ResponseStream.MoveNext(CancellationToken.None).GetAwaiter().GetResult() ? stream.ResponseStream.Current : null;
        }
        catch (RpcException)
        {
            return null;
        }
    }
}
