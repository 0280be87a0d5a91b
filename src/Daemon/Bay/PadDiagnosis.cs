using ScaleLink.Daemon.Links;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Weighing.Settling.Noise;

namespace ScaleLink.Daemon.Bay;

/// <summary>What a while of listening to one pad shows. What needs a load is absent while the pad has no zero or calibration.</summary>
internal sealed record PadDiagnosis
{
    private const int FewestForSpectrum = 64;
    private const int MostLines = 5;

    /// <summary>Samples taken.</summary>
    public required int Samples { get; init; }

    /// <summary>Samples a second; absent with fewer than two.</summary>
    public double? RateHz { get; init; }

    /// <summary>Samples missing by the pad's own numbering.</summary>
    public long Missed { get; init; }

    /// <summary>Longest time between two samples, ms.</summary>
    public double LongestGapMs { get; init; }

    /// <summary>Samples of a clipped or faulty converter.</summary>
    public int Unsound { get; init; }

    /// <summary>Not one count changed.</summary>
    public bool Frozen { get; init; }

    /// <summary>Standard deviation of the load, kg.</summary>
    public double? NoiseKg { get; init; }

    /// <summary>Lines of mains and vibration, strongest first.</summary>
    public IReadOnlyList<SpectralLine> Lines { get; init; } = [];

    /// <summary>Overlapping Allan deviation, seconds and kg.</summary>
    public IReadOnlyList<(double Seconds, double DeviationKg)> Allan { get; init; } = [];

    /// <summary>Last second less the first, kg.</summary>
    public double? DriftKg { get; init; }

    /// <summary>Describes the samples, in the order in which they came.</summary>
    public static PadDiagnosis Of(IReadOnlyList<TakenSample> samples)
    {
        ArgumentNullException.ThrowIfNull(samples);
        var loads = samples.Where(s => s.LoadKg is not null).Select(s => s.LoadKg!.Value).ToArray();
        var span = samples.Count > 1 ? (samples[^1].AtNs - samples[0].AtNs) / (double)Nanoseconds.PerSecond : 0;
        var rate = span > 0 ? (samples.Count - 1) / span : (double?)null;
        var hasSpectrum = rate is not null && loads.Length >= FewestForSpectrum;
        return new PadDiagnosis
        {
            Samples = samples.Count,
            RateHz = rate,
            Missed = MissedIn(samples),
            LongestGapMs = LongestGap(samples),
            Unsound = samples.Count(s => !StatusFaults.CanWeigh(s.Raw.Status)),
            Frozen = samples.Count > 1 && samples.All(s => SameCounts(s.Raw, samples[0].Raw)),
            NoiseKg = loads.Length > 1 ? Deviation(loads) : null,
            Lines = hasSpectrum ? [.. LineSpectrum.Lines(loads, rate!.Value).Take(MostLines)] : [],
            Allan = hasSpectrum ? AllanOf(loads, rate!.Value) : [],
            DriftKg = hasSpectrum ? loads[^Second(rate!.Value, loads)..].Average() - loads[..Second(rate.Value, loads)].Average() : null,
        };
    }

    private static int Second(double rate, double[] loads) => Math.Clamp((int)rate, 1, loads.Length / 2);

    private static double Deviation(double[] loads)
    {
        var statistics = new RunningStatistics();
        foreach (var load in loads)
            statistics.Add(load);
        return statistics.StandardDeviation ?? 0;
    }

    // Octaves from one sample to a quarter of the record.
    private static List<(double, double)> AllanOf(double[] loads, double rate)
    {
        var points = new List<(double, double)>();
        for (var length = 1; length <= loads.Length / 4; length *= 2)
            points.Add((length / rate, AllanDeviation.Overlapping(loads, length)));
        return points;
    }

    private static long MissedIn(IReadOnlyList<TakenSample> samples)
    {
        var track = new SequenceTrack();
        foreach (var sample in samples)
            if (sample.Raw.Sequence is { } sequence)
                track.Accept(sequence);
        return track.Missed;
    }

    private static double LongestGap(IReadOnlyList<TakenSample> samples) =>
        samples.Zip(samples.Skip(1), (a, b) => Nanoseconds.ToMilliseconds(b.AtNs - a.AtNs)).DefaultIfEmpty(0).Max();

    private static bool SameCounts(in RawSample a, in RawSample b)
    {
        for (var cell = 0; cell < a.Cells; cell++)
            if (a.Counts[cell] != b.Counts[cell])
                return false;
        return true;
    }
}
