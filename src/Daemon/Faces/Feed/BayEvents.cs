using System.Runtime.CompilerServices;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Workflows.WorkSessions.Service;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Faces.Feed;

/// <summary>Loads, pads and work session of one reader as one stream.</summary>
internal static class BayEvents
{
    public static async IAsyncEnumerable<Wire.BayEvent> Merge(
        PacedLoads loads, (ChangeNudges Changes, PadsList Pads) pads, (ChangeNudges Changes, SessionAnswer Session) work, [EnumeratorCancellation] CancellationToken cancellation)
    {
        var reading = loads.WaitAsync(cancellation).AsTask();
        var (change, step) = (pads.Changes.Items.WaitToReadAsync(cancellation).AsTask(), work.Changes.Items.WaitToReadAsync(cancellation).AsTask());
        while (true)
        {
            await Task.WhenAny(reading, change, step);
            if (change.IsCompleted)
            {
                if (!await change)
                    yield break;
                pads.Changes.Items.TryRead(out _);
                yield return new Wire.BayEvent { Pads = pads.Pads.Now() };
                change = pads.Changes.Items.WaitToReadAsync(cancellation).AsTask();
            }

            if (step.IsCompleted)
            {
                if (!await step)
                    yield break;
                work.Changes.Items.TryRead(out _);
                yield return new Wire.BayEvent { Session = work.Session.Now() };
                step = work.Changes.Items.WaitToReadAsync(cancellation).AsTask();
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
