using System.Runtime.CompilerServices;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>Loads and pads of one reader as one stream.</summary>
internal static class BayEvents
{
    public static async IAsyncEnumerable<Wire.BayEvent> Merge(PacedLoads loads, PadChanges changes, PadsList pads, [EnumeratorCancellation] CancellationToken cancellation)
    {
        var (reading, change) = (loads.WaitAsync(cancellation).AsTask(), changes.Items.WaitToReadAsync(cancellation).AsTask());
        while (true)
        {
            await Task.WhenAny(reading, change);
            if (change.IsCompleted)
            {
                if (!await change)
                    yield break;
                changes.Items.TryRead(out _);
                yield return new Wire.BayEvent { Pads = pads.Now() };
                change = changes.Items.WaitToReadAsync(cancellation).AsTask();
            }

            if (reading.IsCompleted)
            {
                if (!await reading)
                    yield break;
                while (loads.TryTake(out var next))
                    yield return new Wire.BayEvent { Loads = next };
                reading = loads.WaitAsync(cancellation).AsTask();
            }
        }
    }
}
