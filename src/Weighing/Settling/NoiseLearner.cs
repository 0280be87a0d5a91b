namespace ScaleLink.Weighing.Settling;

/// <summary>
/// Learns how much a block of each pad varies while the car stands still. From differences of neighbours, so that creep and
/// slow rocking do not count, and from their median, so that a knock does not. A car may be called settled while it still rocks, so a
/// stretch teaches only when its blocks follow each other like noise on every pad.
/// </summary>
sealed class NoiseLearner(Corners start)
{
    const int Quiet = 60;
    const int Memory = 20;
    const double LeastKg = 0.01;
    const double MedianToDeviation = 1.4826;

    // Mean squared step over variance (von Neumann's ratio): 2 for white noise, 1.1 or less for rocking below 3.5 Hz.
    const double LeastStepRatio = 1.4;

    readonly double[] _steps = new double[Quiet - 1];
    int _quiet;
    int _lessons = 1;

    /// <summary>Standard deviation of a block at rest, kg.</summary>
    public Corners NoiseKg { get; private set; } = start;

    /// <summary>One more block. Every three seconds of unbroken quiet are one lesson; the last minute counts.</summary>
    public void Add(BlockHistory history, bool quiet)
    {
        _quiet = quiet ? _quiet + 1 : 0;
        if (_quiet < Quiet) return;
        _quiet = 0;
        foreach (var corner in Corners.All)
            if (StepRatio(history.Newest(corner, Quiet)) < LeastStepRatio) return;
        _lessons = Math.Min(_lessons + 1, Memory);
        var noise = NoiseKg;
        foreach (var corner in Corners.All)
        {
            double known = noise[corner], seen = Deviation(history.Newest(corner, Quiet));
            noise = noise.With(corner, Math.Max(LeastKg, Math.Sqrt(known * known + (seen * seen - known * known) / _lessons)));
        }
        NoiseKg = noise;
    }

    /// <summary>The quiet stretch is broken; what was learned stays.</summary>
    public void Clear() => _quiet = 0;

    static double StepRatio(ReadOnlySpan<double> blocks)
    {
        double mean = 0, steps = 0, squares = 0;
        foreach (var block in blocks) mean += block / blocks.Length;
        for (var i = 0; i < blocks.Length; i++)
        {
            squares += (blocks[i] - mean) * (blocks[i] - mean);
            if (i > 0) steps += (blocks[i] - blocks[i - 1]) * (blocks[i] - blocks[i - 1]);
        }
        return squares > 0 ? steps / squares : LeastStepRatio;
    }

    double Deviation(ReadOnlySpan<double> blocks)
    {
        for (var i = 0; i < _steps.Length; i++) _steps[i] = Math.Abs(blocks[i + 1] - blocks[i]);
        _steps.AsSpan().Sort();
        return MedianToDeviation * _steps[_steps.Length / 2] / Math.Sqrt(2);
    }
}
