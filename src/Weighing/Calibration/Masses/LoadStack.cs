namespace ScaleLink.Weighing.Calibration;

/// <summary>What stands on the pad at one step: known masses and ballast, by label. Empty is a stack too.</summary>
/// <param name="Masses">Labels from the list of masses.</param>
/// <param name="Ballast">Labels of heavy things of unknown mass that stand in for masses not owned.</param>
public sealed record LoadStack(IReadOnlyList<string> Masses, IReadOnlyList<string> Ballast)
{
    /// <summary>Nothing on the pad.</summary>
    public static LoadStack Empty { get; } = new([], []);

    /// <summary>Known masses alone.</summary>
    public static LoadStack Of(params IReadOnlyList<string> masses) => new(masses, []);

    /// <summary>Known masses on top of ballast.</summary>
    public LoadStack On(params IReadOnlyList<string> ballast) => this with { Ballast = ballast };

    /// <summary>True when nothing stands on the pad.</summary>
    public bool IsEmpty => Masses.Count == 0 && Ballast.Count == 0;

    /// <summary>Names the stack whatever order it was piled in.</summary>
    public string Key => string.Join('+', Masses.Order(StringComparer.Ordinal)) + "|" + string.Join('+', Ballast.Order(StringComparer.Ordinal));

    /// <summary>The same things, in whatever order.</summary>
    public bool Equals(LoadStack? other) => other is not null && Key == other.Key;

    /// <inheritdoc/>
    public override int GetHashCode() => Key.GetHashCode(StringComparison.Ordinal);

    /// <summary>For people: "20 A + 20 B, ballast 1".</summary>
    public override string ToString() => IsEmpty
        ? "empty pad"
        : string.Join(", ", new[] { string.Join(" + ", Masses), string.Join(" + ", Ballast) }.Where(part => part.Length > 0));
}
