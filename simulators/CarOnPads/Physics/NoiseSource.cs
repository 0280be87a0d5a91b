namespace CarOnPads.Physics;

/// <summary>
/// A repeatable stream of random numbers (SplitMix64, Steele, Lea and Flood 2014). Each user owns a stream of its own,
/// named by text, so that switching one imperfection does not disturb another.
/// </summary>
sealed class NoiseSource
{
    ulong _state;
    double _spare = double.NaN;

    /// <summary>The stream called <paramref name="name"/> of the run with this seed.</summary>
    public NoiseSource(long seed, string name)
    {
        // FNV-1a over the name: String.GetHashCode differs from run to run.
        var hash = 14695981039346656037UL;
        foreach (var letter in name)
            hash = (hash ^ letter) * 1099511628211UL;
        _state = (ulong)seed * 0x9E3779B97F4A7C15UL ^ hash;
        Next();
    }

    NoiseSource(ulong state, double spare) => (_state, _spare) = (state, spare);

    /// <summary>A source that will say the same from here on.</summary>
    public NoiseSource Copy() => new(_state, _spare);

    /// <summary>64 random bits.</summary>
    public ulong Next()
    {
        var z = _state += 0x9E3779B97F4A7C15UL;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }

    /// <summary>Uniform in [<paramref name="low"/>, <paramref name="high"/>).</summary>
    public double Uniform(double low, double high) => low + (high - low) * ((Next() >> 11) * (1.0 / (1UL << 53)));

    /// <summary>Normal with mean zero and deviation one (polar method, two at a time).</summary>
    public double Normal()
    {
        if (!double.IsNaN(_spare))
        {
            var kept = _spare;
            _spare = double.NaN;
            return kept;
        }

        double u, v, s;
        do
        {
            u = Uniform(-1, 1);
            v = Uniform(-1, 1);
            s = u * u + v * v;
        }
        while (s is >= 1 or 0);
        var scale = Math.Sqrt(-2 * Math.Log(s) / s);
        _spare = v * scale;
        return u * scale;
    }
}
