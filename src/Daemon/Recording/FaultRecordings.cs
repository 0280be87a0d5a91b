using System.Collections.Concurrent;
using System.Threading.Channels;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Recording;

/// <summary>
/// Writes a link recording when a fault begins, a little later, so that it holds what followed too. A link that fails again and again gets one file a
/// tape's length, which holds all of it.
/// </summary>
internal sealed class FaultRecordings(LiveBay bay, FlightRecorder recorder, RecordingFolder folder, BayClock clock, TimeProvider time, ILogger<FaultRecordings> log) : BackgroundService
{
    private const int MostWaiting = 64;
    private static readonly TimeSpan Aftermath = TimeSpan.FromSeconds(2);

    private readonly Channel<(RecordedLink Link, Diagnostic Fault)> _begun =
        Channel.CreateBounded<(RecordedLink, Diagnostic)>(new BoundedChannelOptions(MostWaiting) { FullMode = BoundedChannelFullMode.DropWrite });

    private readonly ConcurrentDictionary<RecordedLink, Task> _pending = [];
    private readonly ConcurrentDictionary<RecordedLink, long> _writtenNs = [];
    private readonly ConcurrentDictionary<RecordedLink, Rarely> _lines = [];

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var watches = bay.Pads.Select(p => new FaultWatch(p, recorder, clock, (link, fault) => _begun.Writer.TryWrite((link, fault)))).ToList();
        try
        {
            await foreach (var (link, fault) in _begun.Reader.ReadAllAsync(stoppingToken))
                if (!_pending.ContainsKey(link))
                    _pending[link] = WriteLater(link, fault, stoppingToken);
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // The daemon ends; what waits is written all the same.
            await Task.WhenAll(_pending.Values);
        }
        finally
        {
            watches.ForEach(w => w.End());
        }
    }

    private async Task WriteLater(RecordedLink link, Diagnostic fault, CancellationToken stop)
    {
        var sinceLast = _writtenNs.TryGetValue(link, out var before) ? TimeSpan.FromMicroseconds((clock.NowNs - before) / 1000) : recorder.Span;
        var wait = recorder.Span - sinceLast > Aftermath ? recorder.Span - sinceLast : Aftermath;
        await Task.Delay(wait, time, stop).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing | ConfigureAwaitOptions.ForceYielding);
        _writtenNs[link] = clock.NowNs;
        _pending.TryRemove(link, out _);
        Write(link, fault);
    }

    private void Write(RecordedLink link, Diagnostic fault)
    {
        if (recorder.Take(link, recorder.Span, $"{fault.Code} {fault.Message}") is not { } recording)
            return;
        try
        {
            var file = folder.Save(recording, link.ShortName, fault.Code.Text, clock.ToUtc(clock.NowNs));
            if (_lines.GetOrAdd(link, _ => new Rarely(time)).Ask(out var more))
                log.LogInformation("{Link} {Code}: what the link carried is in {File}{More}", link.ShortName, fault.Code, Path.Combine(folder.Path, file.Name), more > 0 ? $"; {more} files more since the last line" : "");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            log.LogWarning("No link recording can be written to {Folder}: {Why} Free space there, or name another folder in recorder.path. ({Code})", folder.Path, e.Message, ServiceCodes.RecordingUnwritable);
        }
    }
}
