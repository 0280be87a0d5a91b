namespace Weighing.Tests.Settling.Scenarios;

/// <summary>Seeded draws: the same seed gives the same car, crew and noise on every machine.</summary>
sealed class Draw(int seed)
{
    readonly Random _random = new(seed);
    double? _spare;

    public double Uniform(double low, double high) => low + (high - low) * _random.NextDouble();

    public double LogUniform(double low, double high) => Math.Exp(Uniform(Math.Log(low), Math.Log(high)));

    public double Sign() => _random.NextDouble() < 0.5 ? -1 : 1;

    /// <summary>Standard normal, by Marsaglia's polar method.</summary>
    public double Normal()
    {
        if (_spare is { } kept)
        {
            _spare = null;
            return kept;
        }
        while (true)
        {
            double a = Uniform(-1, 1), b = Uniform(-1, 1), r = a * a + b * b;
            if (r is 0 or >= 1) continue;
            var scale = Math.Sqrt(-2 * Math.Log(r) / r);
            _spare = scale * b;
            return scale * a;
        }
    }

    /// <summary>Instants of a Poisson process between two times.</summary>
    public IEnumerable<double> Poisson(double rate, double from, double to)
    {
        for (var t = from - Math.Log(1 - _random.NextDouble()) / rate; t < to; t -= Math.Log(1 - _random.NextDouble()) / rate)
            yield return t;
    }
}
