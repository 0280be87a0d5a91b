using System.Diagnostics.CodeAnalysis;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Runtime;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Faces.Feed;

/// <summary>One reader's loads at the pace it asked for, out of a queue of its own.</summary>
internal sealed class PacedLoads(LiveBay bay, ApiMapping mapping, double rateHz) : IDisposable
{
    private const int QueuedReadings = 40;

    private readonly Pace _pace = new(rateHz);
    private readonly Broadcast<BayReading>.Subscription _readings = bay.Readings.Subscribe(QueuedReadings);

    /// <summary>True when readings wait to be taken, false at the end of the feed.</summary>
    public ValueTask<bool> WaitAsync(CancellationToken cancellation) => _readings.Items.WaitToReadAsync(cancellation);

    /// <summary>The next loads that are due; false when all that waited has been taken.</summary>
    public bool TryTake([NotNullWhen(true)] out Wire.Loads? loads)
    {
        while (_readings.Items.TryRead(out var reading))
        {
            if (!_pace.IsDue(reading))
                continue;
            loads = mapping.Loads(reading, _pace.MaxAgeMs, _readings.Dropped);
            return true;
        }

        loads = null;
        return false;
    }

    public void Dispose() => _readings.Dispose();
}
