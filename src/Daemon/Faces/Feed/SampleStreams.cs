using System.Runtime.CompilerServices;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Runtime;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Faces.Feed;

/// <summary>The samples of some pads as one stream of batches: whatever has come since the last batch of that pad.</summary>
internal sealed class SampleStreams : IDisposable
{
    // Four seconds of the fastest pad.
    private const int QueuedSamples = 4096;
    private const int MostInBatch = 512;

    private readonly List<(PadChannel Pad, Broadcast<TakenSample>.Subscription Samples)> _streams;
    private readonly string _startId;

    public SampleStreams(IEnumerable<PadChannel> pads, string startId)
    {
        _startId = startId;
        _streams = [.. pads.Select(p => (p, p.Samples.Subscribe(QueuedSamples)))];
    }

    public async IAsyncEnumerable<Wire.SampleBatch> ReadAllAsync([EnumeratorCancellation] CancellationToken cancellation)
    {
        var waits = _streams.Select(s => s.Samples.Items.WaitToReadAsync(cancellation).AsTask()).ToArray();
        while (waits.Length > 0)
        {
            await Task.WhenAny(waits);
            for (var i = 0; i < waits.Length; i++)
            {
                if (!waits[i].IsCompleted)
                    continue;
                if (!await waits[i])
                    yield break;
                yield return Take(_streams[i].Pad, _streams[i].Samples);
                waits[i] = _streams[i].Samples.Items.WaitToReadAsync(cancellation).AsTask();
            }
        }
    }

    public void Dispose()
    {
        foreach (var stream in _streams)
            stream.Samples.Dispose();
    }

    private Wire.SampleBatch Take(PadChannel pad, Broadcast<TakenSample>.Subscription samples)
    {
        var batch = new Wire.SampleBatch
        {
            Corner = pad.Corner.ToWire(),
            SerialNumber = pad.Snapshot().Identity?.SerialNumber ?? "",
            StartId = _startId,
        };
        while (batch.Samples.Count < MostInBatch && samples.Items.TryRead(out var taken))
            batch.Samples.Add(ToApi(taken));
        batch.Dropped = (ulong)samples.Dropped;
        return batch;
    }

    private static Wire.Sample ToApi(TakenSample taken)
    {
        var sample = new Wire.Sample
        {
            PadSeq = taken.Raw.Sequence ?? 0,
            MonotonicNs = taken.AtNs,
            Status = (uint)taken.Raw.Status,
        };
        for (var cell = 0; cell < taken.Raw.Cells; cell++)
            sample.Counts.Add(taken.Raw.Counts[cell]);
        if (taken.LoadKg is { } load)
            sample.LoadKg = load;
        if (taken.Raw.PitchDegrees is { } pitch)
            sample.PitchDeg = pitch;
        if (taken.Raw.RollDegrees is { } roll)
            sample.RollDeg = roll;
        if (taken.Raw.TemperatureCelsius is { } temperature)
            sample.TemperatureC = temperature;
        return sample;
    }
}
