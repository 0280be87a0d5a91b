using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;

namespace ScaleLink.Client.Demo;

/// <summary>A whole bay that runs beside this program: simulated car on pads, daemon, and the folder they share.</summary>
internal sealed class DemoBay : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan AskAgain = TimeSpan.FromMilliseconds(100);
    // Ctrl-C reaches the children as soon as this program: their end is no news then.
    private static readonly TimeSpan Grace = TimeSpan.FromMilliseconds(500);

    private readonly BayFolder _folder = new();
    private readonly TimeProvider _time;
    private ChildProgram? _simulator;
    private ChildProgram? _daemon;

    private DemoBay(Ports ports, TimeProvider time)
    {
        (Ports, _time) = (ports, time);
        Daemon = new DaemonConnection($"http://127.0.0.1:{ports.Grpc}", time);
    }

    public Ports Ports { get; }

    public DaemonConnection Daemon { get; }

    /// <summary>The crew's hands on the car.</summary>
    public CarControl Car { get; private set; } = null!;

    /// <summary>Folder of bay file and ledger.</summary>
    public string Folder => _folder.Path;

    /// <summary>The children, by their numbers.</summary>
    public IReadOnlyList<int> ProcessIds => [.. new[] { _simulator, _daemon }.OfType<ChildProgram>().Select(c => c.Id)];

    /// <summary>Starts everything, the car raised, and waits until the daemon answers.</summary>
    /// <exception cref="ClientException">SL-430 to SL-436: what could not be started, and why.</exception>
    public static async Task<DemoBay> Start(DemoSetup setup, TimeProvider time, CancellationToken stop)
    {
        var bay = new DemoBay(Ports.Choose(setup.Ports), time);
        try
        {
            await bay.StartSimulator(setup, stop);
            await bay.StartDaemon(stop);
            return bay;
        }
        catch (Exception e)
        {
            await bay.DisposeAsync();
            if (e is TimeoutException)
                throw new ClientException(new Diagnostic(DemoCodes.NotReady, $"The demo was not ready within {Patience.TotalSeconds:0} s.", "The machine may be overloaded: try again."), e);
            throw;
        }
    }

    /// <summary>Fails as soon as one of the programs ends by itself.</summary>
    /// <exception cref="ClientException">SL-433.</exception>
    public async Task Guard(CancellationToken stop)
    {
        await Task.WhenAny(_simulator!.Ended, _daemon!.Ended).WaitAsync(stop);
        await Task.Delay(Grace, _time, stop);
        throw new ClientException((_simulator.Ended.IsCompleted ? _simulator : _daemon).Loss());
    }

    /// <summary>Waits for work that needs the bay.</summary>
    /// <exception cref="ClientException">What the work met; or SL-433, for a program that ended explains more than what others met after it.</exception>
    public async Task Accompany(Task work, CancellationToken stop)
    {
        var guard = Guard(stop);
        var first = await Task.WhenAny(work, guard);
        if (work.IsFaulted)
            await Task.WhenAny(guard, Task.Delay(2 * Grace, _time, stop));
        await (guard.IsFaulted ? guard : first);
    }

    public async ValueTask DisposeAsync()
    {
        await Daemon.DisposeAsync();
        Car?.Dispose();
        // The daemon first: a pad that goes away under a running daemon is an alarm, and this is none.
        if (_daemon is not null)
            await _daemon.DisposeAsync();
        if (_simulator is not null)
            await _simulator.DisposeAsync();
        _folder.Dispose();
    }

    private async Task StartSimulator(DemoSetup setup, CancellationToken stop)
    {
        List<string> arguments = ["--start", "raised"];
        arguments.AddRange(setup.Tcp || OperatingSystem.IsWindows() ? ["--tcp"] : ["--ports", _folder.PortFolder]);
        if (setup.Seed is { } seed)
            arguments.AddRange(["--seed", $"{seed}"]);
        _simulator = ChildProgram.Start("simulator", Programs.Simulator, arguments, _time);
        var car = SimulatedCar.Parse(await _simulator.FirstLine(Patience, stop));
        _folder.Write(car, Ports);
        Car = await CarControl.Connect(car.Control, _time, stop);
    }

    private async Task StartDaemon(CancellationToken stop)
    {
        _daemon = ChildProgram.Start("daemon", Programs.Daemon, ["--bay", _folder.BayFile], _time);
        var started = _time.GetTimestamp();
        while (true)
        {
            try
            {
                await Daemon.Ask(options => Daemon.Feed.GetClockAsync(new GetClockRequest(), options), stop);
                return;
            }
            catch (ClientException) when (_daemon.Ended.IsCompleted)
            {
                throw new ClientException(_daemon.Loss());
            }
            catch (ClientException) when (_time.GetElapsedTime(started) < Patience)
            {
                await Task.Delay(AskAgain, _time, stop);
            }
            catch (ClientException e)
            {
                throw new TimeoutException(e.Message, e);
            }
        }
    }
}
