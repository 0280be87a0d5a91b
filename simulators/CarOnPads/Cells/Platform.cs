using CarOnPads.Physics;

namespace CarOnPads.Cells;

/// <summary>A stiff plate on four cells, in the order front left, front right, rear left, rear right.</summary>
sealed class Platform
{
    /// <summary>Cells of one pad.</summary>
    public const int Cells = 4;

    /// <summary>What a pad may carry, kg.</summary>
    public const double CapacityKg = 600;

    /// <summary>Ends of a 20-bit converter.</summary>
    public const int HighestCount = (1 << 19) - 1;

    /// <summary>The other end.</summary>
    public const int LowestCount = -(1 << 19);

    /// <summary>Cells stand this far from the middle, forward and to the side, m.</summary>
    public const double Reach = 0.17;

    const double DeadLoadKg = 6.4;
    readonly Imperfections _imperfections;
    readonly LoadCell[] _cells = new LoadCell[Cells];
    readonly double _span;
    readonly MainsHum _hum;

    public Platform(long seed, string name, double kgPerCount, Imperfections imperfections)
    {
        _imperfections = imperfections;
        KgPerCount = kgPerCount;
        var traits = new NoiseSource(seed, name + " traits");
        _span = 1 + traits.Uniform(-0.004, 0.004);
        _hum = new MainsHum(traits);
        for (var i = 0; i < Cells; i++)
            _cells[i] = new LoadCell(CellTraits.Draw(traits), imperfections, new NoiseSource(seed, $"{name} cell {i}"));
    }

    /// <summary>Nominal, every cell.</summary>
    public double KgPerCount { get; }

    /// <summary>Zero change of all cells together, kg per kelvin.</summary>
    public double ZeroPerKelvin => _cells.Sum(cell => cell.ZeroPerKelvin);

    /// <summary>Reads all cells. Returns a bit for each that is at its limit.</summary>
    public int Read(in PlatformLoad load, double time, double seconds, double kelvin, Span<int> counts)
    {
        var scale = load.CosineOfTilt * (_imperfections[Imperfection.Span] ? _span : 1);
        var plate = _imperfections[Imperfection.DeadLoad] ? DeadLoadKg / Cells : 0;
        var hum = _hum.At(time);
        var atLimit = 0;
        for (var i = 0; i < Cells; i++)
        {
            var kg = load.OnCell(i < 2, (i & 1) == 0) + plate;
            var count = _cells[i].Read(kg * scale, seconds, kelvin, hum, KgPerCount);
            counts[i] = (int)Math.Clamp(count, LowestCount, HighestCount);
            if (count is >= HighestCount or <= LowestCount)
                atLimit |= 1 << i;
        }

        return atLimit;
    }
}
