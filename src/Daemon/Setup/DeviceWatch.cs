using ScaleLink.Probing.Listening;
using ScaleLink.Probing.Loading;

namespace ScaleLink.Daemon.Setup;

/// <summary>Reads all devices that were found, each port on a thread of its own, and says whose pad was stepped on.</summary>
internal sealed class DeviceWatch(TimeProvider time) : IDisposable
{
    private static readonly TimeSpan SilentAfter = TimeSpan.FromSeconds(4);

    private CancellationTokenSource _stop = new();
    private List<Thread> _threads = [];
    private ITimer? _beat;

    /// <summary>Begins to read.</summary>
    /// <param name="devices">Whom.</param>
    /// <param name="update">Changes what is known; called from any of the threads.</param>
    public void Start(IReadOnlyList<SetupDevice> devices, Action<Func<SetupProgress, SetupProgress>> update)
    {
        _stop = new CancellationTokenSource();
        var watched = devices.Select(d => new Watched(d, time)).ToList();
        foreach (var port in watched.GroupBy(w => w.Device.Finding))
        {
            var listener = new PortListener(port.Key, time);
            var thread = new Thread(() => listener.Run((found, numbers) => Take(watched.First(w => ReferenceEquals(w.Device.Found, found)), numbers, update), trouble => Lost(port, trouble, update), _stop.Token)) { IsBackground = true, Name = "set-up listener" };
            thread.Start();
            _threads.Add(thread);
        }

        _beat = time.CreateTimer(_ => Silence(watched, update), null, SilentAfter, TimeSpan.FromSeconds(1));
    }

    /// <summary>Stops reading; the ports are free when it returns.</summary>
    public void Stop()
    {
        _stop.Cancel();
        _beat?.Dispose();
        foreach (var thread in _threads)
            thread.Join();
        _threads = [];
    }

    public void Dispose() => Stop();

    private static void Take(Watched watched, HeardNumbers numbers, Action<Func<SetupProgress, SetupProgress>> update)
    {
        var cells = watched.Take(numbers);
        var (id, isLoaded, isReady) = (watched.Device.Id, watched.IsLoaded, watched.IsReady);
        update(p =>
        {
            // Another search has begun: what is heard now belongs to the one before.
            if (p.Devices.FirstOrDefault(d => d.Id == id) is not { } device)
                return p;
            if (device.LoadedSince is not null != isLoaded || device.Silence is not null || device.IsReady != isReady)
                p = p.With(id, d => d with { LoadedSince = isLoaded ? d.LoadedSince ?? numbers.At : null, Silence = null, IsReady = isReady }).Begun();
            return cells is null ? p : SteppedOff.Apply(p, id, numbers.At, cells);
        });
    }

    private static void Lost(IEnumerable<Watched> port, Diagnostic? trouble, Action<Func<SetupProgress, SetupProgress>> update)
    {
        if (trouble is null)
            return;
        foreach (var watched in port)
        {
            watched.Lose();
            update(p => p.With(watched.Device.Id, d => d with { Silence = trouble, LoadedSince = null }));
        }
    }

    private static void Silence(List<Watched> all, Action<Func<SetupProgress, SetupProgress>> update)
    {
        foreach (var watched in all.Where(w => w.SilentFor > SilentAfter))
        {
            var silence = new Diagnostic(SetupCodes.DeviceSilent, $"Nothing was heard of {watched.Device.Id} for {SilentAfter.TotalSeconds:0} s.", SetupCodes.DeviceSilent.Remedy);
            update(p => p.Devices.FirstOrDefault(d => d.Id == watched.Device.Id) is { Silence: null } ? p.With(watched.Device.Id, d => d with { Silence = silence, LoadedSince = null }).Begun() : p);
        }
    }

    private sealed class Watched(SetupDevice device, TimeProvider time)
    {
        private readonly Lock _lock = new();
        private LoadedPad? _pad;
        private long _heard = time.GetTimestamp();

        public SetupDevice Device => device;

        public bool IsLoaded => _pad?.IsLoaded ?? false;

        public bool IsReady => _pad?.IsReady ?? false;

        public TimeSpan SilentFor => time.GetElapsedTime(Interlocked.Read(ref _heard));

        public IReadOnlyList<NumberPlace>? Take(HeardNumbers numbers)
        {
            lock (_lock)
            {
                Interlocked.Exchange(ref _heard, time.GetTimestamp());
                _pad ??= new LoadedPad(numbers.Places);
                return _pad.Take(numbers.At, numbers.Values);
            }
        }

        // Whoever was away is another pad perhaps: rest is learned anew.
        public void Lose()
        {
            lock (_lock)
                _pad = null;
        }
    }
}
