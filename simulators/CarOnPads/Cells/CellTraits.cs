using CarOnPads.Physics;

namespace CarOnPads.Cells;

/// <summary>
/// What one cell deviates by, drawn once. Sizes are of a good industrial cell of 250 kg: errors near 0.02 % of
/// capacity, as OIML R 60 class C3 cells have (3000 intervals; common practice, no measured cell stands behind them).
/// </summary>
sealed record CellTraits
{
    /// <summary>Capacity of one cell, kg.</summary>
    public const double CapacityKg = 250;

    /// <summary>Noise of one cell, kg rms at 80 samples a second: four make 0.1 kg a pad.</summary>
    public const double NoiseKg = 0.05;

    /// <summary>Sample rate at which <see cref="NoiseKg"/> holds; the density is the same at any rate.</summary>
    public const double NoiseRateHz = 80;

    /// <summary>Width of the hysteresis loop, half of it, kg.</summary>
    public const double HysteresisKg = 0.02;

    /// <summary>Part of a load change that the loop takes up until it is wide open.</summary>
    public const double HysteresisSlope = 0.001;

    /// <summary>Converter step of <c>quantisation</c>, counts.</summary>
    public const int CoarseCounts = 32;

    /// <summary>Output at no load, counts.</summary>
    public required double Offset { get; init; }
    /// <summary>Relative difference from the pad's mean sensitivity.</summary>
    public required double Unequal { get; init; }
    /// <summary>Largest bow between zero and capacity, kg.</summary>
    public required double BowKg { get; init; }
    /// <summary>Final creep as part of the load.</summary>
    public required double Creep { get; init; }
    /// <summary>Time constant of creep, s.</summary>
    public required double CreepSeconds { get; init; }
    /// <summary>Zero change, kg per kelvin.</summary>
    public required double ZeroPerKelvin { get; init; }
    /// <summary>Relative span change per kelvin.</summary>
    public required double SpanPerKelvin { get; init; }
    /// <summary>Amplitude of hum, kg.</summary>
    public required double HumKg { get; init; }

    public static CellTraits Draw(NoiseSource noise) => new()
    {
        Offset = noise.Uniform(-20000, 20000),
        Unequal = noise.Uniform(-0.003, 0.003),
        BowKg = Sign(noise) * noise.Uniform(0.02, 0.05),
        Creep = Sign(noise) * noise.Uniform(0.0001, 0.0003),
        CreepSeconds = noise.Uniform(60, 200),
        ZeroPerKelvin = Sign(noise) * noise.Uniform(0.002, 0.005),
        SpanPerKelvin = Sign(noise) * noise.Uniform(5e-6, 15e-6),
        HumKg = noise.Uniform(0.01, 0.03),
    };

    static double Sign(NoiseSource noise) => noise.Uniform(-1, 1) < 0 ? -1 : 1;
}
