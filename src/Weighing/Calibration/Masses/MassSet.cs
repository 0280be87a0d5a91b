using System.Collections.Frozen;
using System.Text.Json.Serialization;

namespace ScaleLink.Weighing.Calibration.Masses;

/// <summary>The masses at hand, by label.</summary>
sealed class MassSet
{
    readonly FrozenDictionary<string, KnownMass> _byLabel;

    /// <summary>From a list with unique labels.</summary>
    /// <exception cref="RefusedException">SL-316: a label is missing or stands twice.</exception>
    [JsonConstructor]
    public MassSet(IReadOnlyList<KnownMass> masses)
    {
        ArgumentNullException.ThrowIfNull(masses);
        if (masses.GroupBy(m => m.Label).FirstOrDefault(g => string.IsNullOrWhiteSpace(g.Key) || g.Count() > 1) is { } group)
            throw new RefusedException(CalibrationCodes.MassUnknown.Because($"label '{group.Key}' must name one mass, it names {group.Count()}"));
        Masses = masses;
        _byLabel = masses.ToFrozenDictionary(m => m.Label, StringComparer.Ordinal);
    }

    /// <summary>In the order given.</summary>
    public IReadOnlyList<KnownMass> Masses { get; }

    /// <summary>The mass with this label.</summary>
    /// <exception cref="RefusedException">SL-316: there is none.</exception>
    public KnownMass this[string label] => _byLabel.TryGetValue(label, out var mass)
        ? mass
        : throw new RefusedException(CalibrationCodes.MassUnknown.Because($"'{label}'"));

    /// <summary>True when every mass of the stack is listed.</summary>
    public bool Knows(LoadStack stack) => stack.Masses.All(_byLabel.ContainsKey);

    /// <summary>Sum of the known masses of a stack, kg, ballast left out.</summary>
    public double Kg(LoadStack stack) => stack.Masses.Sum(label => this[label].Kg);

    /// <summary>Largest error the known masses of a stack can have together, kg.</summary>
    public double ToleranceKg(LoadStack stack) => stack.Masses.Sum(label => this[label].ToleranceKg);
}
