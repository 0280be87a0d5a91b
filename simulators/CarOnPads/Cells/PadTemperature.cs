using CarOnPads.Physics;

namespace CarOnPads.Cells;

/// <summary>Temperature of a pad's metal, which follows the workshop's air slowly, and the thermometer on it.</summary>
sealed class PadTemperature(long seed, string name, Imperfections imperfections)
{
    /// <summary>Where cells are calibrated, °C.</summary>
    public const double Reference = 20;

    /// <summary>Standard deviation of the thermometer, K.</summary>
    public const double NoiseKelvin = 0.05;

    /// <summary>Time in which the metal makes up 63 % of a change, s.</summary>
    public const double LagSeconds = 600;

    readonly NoiseSource _noise = new(seed, name + " temperature");

    /// <summary>The metal, °C.</summary>
    public double Metal { get; private set; } = Reference;

    /// <summary>The air, °C.</summary>
    public double Air { get; set; } = Reference;

    /// <summary>How much warmer than the air the sun would make the metal in the end, K; 0 in the shade.</summary>
    public double Sun { get; set; }

    /// <summary>Lets time pass.</summary>
    public void Advance(double seconds) => Metal += (Air + Sun - Metal) * Math.Min(1, seconds / LagSeconds);

    /// <summary>The metal is at once where air and sun would bring it.</summary>
    public void Equalise() => Metal = Air + Sun;

    /// <summary>What the thermometer says, °C.</summary>
    public double Read() =>
        Metal + (imperfections[Imperfection.ThermometerNoise] ? NoiseKelvin * _noise.Normal() : 0);
}
