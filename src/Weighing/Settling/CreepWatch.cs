namespace ScaleLink.Weighing.Settling;

/// <summary>
/// Sees creep: a straight line through half-second means of the last twenty seconds at rest. Said only when the slope stands
/// clear of noise, since a wrong "it creeps" sends the crew looking for a fault.
/// </summary>
sealed class CreepWatch
{
    const int BlocksPerMean = 10;
    const int Look = 40;
    const int Least = 24;
    const double TimesError = 4;
    const double LeastKgPerSecond = 0.001;

    readonly Corners[] _means = new Corners[Look];
    Corners _sum;
    int _blocks;
    int _count;

    /// <summary>Creep of each pad, kg/s; null: none to be seen, or too little quiet.</summary>
    public Corners? DriftPerSecond { get; private set; }

    /// <summary>One more block; anything but rest starts anew.</summary>
    public void Add(in Corners block, bool atRest)
    {
        if (!atRest)
        {
            Clear();
            return;
        }
        _sum += block;
        if (++_blocks < BlocksPerMean) return;
        _means[_count++ % Look] = 1.0 / BlocksPerMean * _sum;
        (_sum, _blocks) = (default, 0);
        if (_count >= Least) DriftPerSecond = Slope();
    }

    public void Clear() => (_sum, _blocks, _count, DriftPerSecond) = (default, 0, 0, null);

    Corners? Slope()
    {
        var n = Math.Min(_count, Look);
        Corners mean = default, slope = default, repeatability = default;
        var spread = 0.0;
        for (var i = 0; i < n; i++) mean += 1.0 / n * At(n, i);
        for (var i = 0; i < n; i++)
        {
            var x = i - (n - 1) / 2.0;
            slope += x * (At(n, i) - mean);
            spread += x * x;
        }
        slope = 1 / spread * slope;
        for (var i = 0; i < n; i++)
        {
            var off = At(n, i) - mean - (i - (n - 1) / 2.0) * slope;
            repeatability += off.Times(off);
        }
        var perSecond = 1 / (BlocksPerMean * SettlingEstimator.BlockSeconds);
        foreach (var corner in Corners.All)
        {
            var error = Math.Sqrt(repeatability[corner] / (n - 2) / spread);
            if (Math.Abs(slope[corner]) > TimesError * error && Math.Abs(slope[corner]) * perSecond > LeastKgPerSecond) return perSecond * slope;
        }
        return null;
    }

    Corners At(int n, int i) => _means[(_count - n + i) % Look];
}
