using CarOnPads.Cells;
using CarOnPads.Pads;
using CarOnPads.Physics;

namespace CarOnPads.Bench;

/// <summary>What a bay is made of.</summary>
sealed record BayOptions
{
    /// <summary>The car.</summary>
    public CarDescription Car { get; init; } = CarFile.Heron();
    /// <summary>Every random number follows from it.</summary>
    public long Seed { get; init; } = 1;
    /// <summary>Samples a second of every pad, 10 to 1000.</summary>
    public double Hertz { get; init; } = 320;
    /// <summary>What is not ideal at the start.</summary>
    public Imperfections Imperfections { get; init; } = Imperfections.None();
    /// <summary>The car starts on jacks, the pads empty.</summary>
    public bool Raised { get; init; }
    /// <summary>What the pads speak.</summary>
    public Speaking Speaking { get; init; } = new();
    /// <summary>Modbus addresses of pads; those that are not named have 1 to 4.</summary>
    public IReadOnlyDictionary<Wheel, byte> Slaves { get; init; } = new Dictionary<Wheel, byte>();
    /// <summary>How pads that speak text print; those that are not named print as usual.</summary>
    public IReadOnlyDictionary<Wheel, TextStyle> TextStyles { get; init; } = new Dictionary<Wheel, TextStyle>();
    /// <summary>What inclinometers say on level ground, degrees; pads that are not named say 0.</summary>
    public IReadOnlyDictionary<Wheel, (double Pitch, double Roll)> TiltZeros { get; init; } = new Dictionary<Wheel, (double, double)>();
    /// <summary>Local gravity, m/s².</summary>
    public double Gravity { get; init; } = 9.81;
}
