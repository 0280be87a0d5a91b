using CarOnPads.Runtime;

namespace CarOnPads.Cells;

/// <summary>Which imperfections are switched on. Shared by everything that has some.</summary>
sealed class Imperfections
{
    static readonly Dictionary<string, Imperfection> s_byName =
        Enum.GetValues<Imperfection>().ToDictionary(NameOf, StringComparer.Ordinal);

    readonly HashSet<Imperfection> _on;

    Imperfections(IEnumerable<Imperfection> on) => _on = [.. on];

    /// <summary>Counts are exact but for their rounding, and the car has no memory.</summary>
    public static Imperfections None() => new([]);

    /// <summary>Everything a good workshop bench has.</summary>
    public static Imperfections Default() => new(Enum.GetValues<Imperfection>());

    /// <summary>Every name, in order.</summary>
    public static IEnumerable<string> Names => s_byName.Keys;

    /// <summary>Whether one is switched on.</summary>
    public bool this[Imperfection imperfection] => _on.Contains(imperfection);

    /// <summary>Names of those that are on.</summary>
    public IEnumerable<string> On => _on.Order().Select(NameOf);

    /// <summary><c>none</c>, <c>default</c>, or names with commas between.</summary>
    /// <exception cref="SimulatorException">CP-104 no such name.</exception>
    public static Imperfections Parse(string text) => text switch
    {
        "none" => None(),
        "default" => Default(),
        _ => new Imperfections(text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(Find)),
    };

    /// <summary>Switches one on or off.</summary>
    public void Set(Imperfection imperfection, bool on)
    {
        if (on)
            _on.Add(imperfection);
        else
            _on.Remove(imperfection);
    }

    /// <summary>The imperfection of that name.</summary>
    /// <exception cref="SimulatorException">CP-104 no such name.</exception>
    public static Imperfection Find(string name) =>
        s_byName.TryGetValue(name, out var found)
            ? found
            : throw new SimulatorException("CP-104", $"No imperfection is called {name}.", $"The names are {string.Join(", ", Names)}.");

    /// <summary>The name on the command line: lower case, a hyphen between words.</summary>
    public static string NameOf(Imperfection imperfection) =>
        string.Concat(imperfection.ToString().Select((c, i) => char.IsUpper(c) && i > 0 ? $"-{char.ToLowerInvariant(c)}" : $"{char.ToLowerInvariant(c)}"));
}
