using System.Globalization;
using CarOnPads.Physics;
using CarOnPads.Runtime;

namespace CarOnPads.Pads;

/// <summary>What the inclinometers say on level ground, from <c>LF=0.3/-0.2,RR=0.1/0</c>: pitch and roll, degrees.</summary>
static class TiltZeros
{
    /// <summary>Largest zero either way, degrees.</summary>
    public const double Largest = 5;

    /// <summary>Pads that are not named have none.</summary>
    /// <exception cref="SimulatorException">CP-105 no such number; CP-107 no such corner.</exception>
    public static IReadOnlyDictionary<Wheel, (double Pitch, double Roll)> Parse(string text)
    {
        Dictionary<Wheel, (double, double)> zeros = [];
        foreach (var part in text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (part.Split('=') is not [var corner, var angles] || angles.Split('/') is not [var pitch, var roll])
                throw new SimulatorException("CP-105", $"--tilt-zero: {part} is no corner with two angles.", "Write LF=0.3/-0.2: pitch and roll in degrees.");
            zeros[Corner(corner)] = (Angle(pitch), Angle(roll));
        }

        return zeros;
    }

    static Wheel Corner(string text) => Enum.TryParse<Wheel>(text, out var wheel) && Enum.IsDefined(wheel)
        ? wheel
        : throw new SimulatorException("CP-107", $"--tilt-zero: there is no corner {text}.", "The corners are LF, RF, LR and RR.");

    static double Angle(string text) => double.TryParse(text, CultureInfo.InvariantCulture, out var degrees) && Math.Abs(degrees) <= Largest
        ? degrees
        : throw new SimulatorException("CP-105", $"--tilt-zero: {text} is no angle.", $"Give degrees from {-Largest} to {Largest}.");
}
