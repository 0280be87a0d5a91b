using ScaleLink.Daemon.Journal;
using ScaleLink.Measure;
using ScaleLink.Probing.Ports;
using ScaleLink.Probing.Search;

namespace ScaleLink.Daemon.Setup;

/// <summary>Where a bay is set up: what is known, and what people do with it. One lock; whoever looks gets an immutable whole.</summary>
internal sealed class SetupDesk(SetupSettings settings, SearchedPorts locks, TimeProvider time) : IDisposable
{
    private readonly Lock _lock = new();
    private readonly SystemTree _tree = new();
    private readonly DeviceWatch _watch = new(time);
    private CancellationTokenSource? _searching;
    private Task _search = Task.CompletedTask;

    /// <summary>Something changed.</summary>
    public event Action? Changed;

    /// <summary>What is known now.</summary>
    public SetupProgress Now { get; private set; } = new();

    /// <summary>Searches these ports, or every adapter that is plugged in; what is heard so far is no longer read.</summary>
    public void Search(IReadOnlyList<string> named)
    {
        lock (_lock)
        {
            _searching?.Cancel();
            var before = _search;
            _searching = new CancellationTokenSource();
            var stop = _searching.Token;
            var ports = named.Count > 0 ? named : [.. SerialPorts.Adapters(_tree).Select(p => p.Asked)];
            var known = Now.Devices;
            Set(new SetupProgress
            {
                Stage = ports.Count > 0 ? SetupStage.Searching : SetupStage.Waiting,
                Ports = [.. ports.Select(p => new SearchedPort(p, "waits"))],
                Note = ports.Count > 0 ? null : new Diagnostic(SetupCodes.NoAdapter, $"{SetupCodes.NoAdapter.Meaning}.", SetupCodes.NoAdapter.Remedy),
            });
            _search = Task.Run(() => Search(before, ports, known, stop), CancellationToken.None);
        }
    }

    /// <summary>Waits for somebody on the pad of this corner; nothing: no longer waits.</summary>
    /// <exception cref="StepRefusedException">SL-480: the ports are being searched.</exception>
    public void Await(Corner? corner) => Change(p => p with { Awaiting = corner, HasBegun = true, Note = null });

    /// <summary>Says under which corner a device stands.</summary>
    /// <exception cref="StepRefusedException">SL-480, SL-482.</exception>
    public void Place(string device, Corner? corner) => Change(p =>
        p.Devices.Any(d => d.Id == device) ? p.Placed(device, corner).Next() : throw Refused(SetupCodes.DeviceUnknown, $"There is no device {PlainText.Clean(device, 64)} here."));

    /// <summary>Writes the bay file.</summary>
    /// <returns>Its text.</returns>
    /// <exception cref="StepRefusedException">SL-480, SL-485 to SL-488, SL-490.</exception>
    /// <exception cref="DiagnosticException">What the bay file would not be taken for, as --check says it.</exception>
    public string Write(string bay, double? capacityKg)
    {
        lock (_lock)
        {
            if (Now.Stage is SetupStage.Searching)
                throw Refused(SetupCodes.Searching, $"{SetupCodes.Searching.Meaning}.");
            var text = NewBayFile.Write(Now, settings, bay, capacityKg, time);
            Set(Now with { Stage = SetupStage.Written, Awaiting = null, Note = null });
            return text;
        }
    }

    public void Dispose()
    {
        _searching?.Cancel();
        _search.Wait();
        _watch.Dispose();
        _searching?.Dispose();
    }

    private async Task Search(Task before, IReadOnlyList<string> ports, IReadOnlyList<SetupDevice> known, CancellationToken stop)
    {
        await before;
        _watch.Stop();
        locks.Release();
        try
        {
            var search = new PortSearch(new SearchSettings { Asking = Asking.WhereSilent }, time, _tree, locks.Take);
            await foreach (var finding in search.Search(ports, new Telling(t => Tell(t)), stop))
            {
                var devices = finding.Found.Where(f => f.Protocol is not null).Select(f => Remembered(new SetupDevice(finding, f), known));
                Update(p => p.With(SearchWords.Of(finding)).Adding(devices));
            }

            Update(p => p with { Stage = SetupStage.Placing });
            _watch.Start(Now.Devices, Update);
        }
        catch (OperationCanceledException)
        {
            // Another search was asked for, or the daemon ends.
        }
    }

    private static SetupDevice Remembered(SetupDevice device, IReadOnlyList<SetupDevice> known) =>
        known.FirstOrDefault(k => k.Id == device.Id) is { } before ? device with { Corner = before.Corner, Cells = before.Cells } : device;

    private void Tell(Probing.Search.SearchProgress told) => Update(p => p.With(new SearchedPort(told.Port, told.Doing)));

    private void Change(Func<SetupProgress, SetupProgress> change)
    {
        lock (_lock)
        {
            if (Now.Stage is not SetupStage.Placing)
                throw Refused(SetupCodes.Searching, Now.Stage is SetupStage.Waiting ? $"The ports were not searched yet." : $"{SetupCodes.Searching.Meaning}.");
            Set(change(Now));
        }
    }

    private void Update(Func<SetupProgress, SetupProgress> change)
    {
        lock (_lock)
        {
            if (change(Now) is var changed && !ReferenceEquals(changed, Now))
                Set(changed);
        }
    }

    private void Set(SetupProgress progress)
    {
        Now = progress;
        Changed?.Invoke();
    }

    private static StepRefusedException Refused(Code code, Sentence message) => new(new Diagnostic(code, message, code.Remedy));

    private sealed class Telling(Action<Probing.Search.SearchProgress> tell) : IProgress<Probing.Search.SearchProgress>
    {
        public void Report(Probing.Search.SearchProgress value) => tell(value);
    }
}
