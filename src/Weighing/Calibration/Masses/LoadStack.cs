using System.Text.Json.Serialization;

namespace ScaleLink.Weighing.Calibration.Masses;

/// <summary>
/// What stands on the pad at one step: known masses and ballast, by label. Two stacks of the same things are equal, in
/// whatever order they were piled.
/// </summary>
[method: JsonConstructor]
sealed class LoadStack(IReadOnlyList<string> masses, IReadOnlyList<string> ballast) : IEquatable<LoadStack>
{
    readonly string _key = $"{Joined(masses)}|{Joined(ballast)}";

    /// <summary>Nothing on the pad.</summary>
    public static LoadStack Empty { get; } = new([], []);

    /// <summary>Labels from the list of masses.</summary>
    public IReadOnlyList<string> Masses => masses;

    /// <summary>Labels of heavy things of unknown mass that stand in for masses not owned.</summary>
    public IReadOnlyList<string> Ballast => ballast;

    /// <summary>True when nothing stands on the pad.</summary>
    [JsonIgnore]
    public bool IsEmpty => masses.Count == 0 && ballast.Count == 0;

    /// <summary>Known masses alone.</summary>
    public static LoadStack Of(params IReadOnlyList<string> masses) => new(masses, []);

    /// <summary>The same masses on top of ballast.</summary>
    public LoadStack On(params IReadOnlyList<string> below) => new(masses, below);

    /// <inheritdoc/>
    public bool Equals(LoadStack? other) => other?._key == _key;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as LoadStack);

    /// <inheritdoc/>
    public override int GetHashCode() => _key.GetHashCode(StringComparison.Ordinal);

    /// <summary>For people: "20 A + 20 B, ballast 1".</summary>
    public override string ToString() => IsEmpty
        ? "empty pad"
        : string.Join(", ", new[] { string.Join(" + ", masses), string.Join(" + ", ballast) }.Where(part => part.Length > 0));

    static string Joined(IReadOnlyList<string> labels) => string.Join('+', labels.Order(StringComparer.Ordinal));
}
