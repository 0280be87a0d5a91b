using System.Collections.Immutable;

namespace ScaleLink.Weighing.SetupSheets;

/// <summary>The values of a setup sheet, in the order in which they are shown. What is not known is not there.</summary>
sealed class SheetContent : IEquatable<SheetContent>
{
    public static readonly SheetContent Empty = new(ImmutableSortedDictionary<SheetSlot, SheetValue>.Empty);

    readonly ImmutableSortedDictionary<SheetSlot, SheetValue> values;

    SheetContent(ImmutableSortedDictionary<SheetSlot, SheetValue> values) => this.values = values;

    public IEnumerable<KeyValuePair<SheetSlot, SheetValue>> Values => values;

    public int Count => values.Count;

    public SheetValue? this[SheetSlot slot] => values.TryGetValue(slot, out var value) ? value : null;

    /// <summary>A number, in the base unit of its field.</summary>
    public double? Number(string key, string place = "") => this[new(key, place)]?.Number;

    /// <summary>The numbers of a field at the four corners; null unless all four are there.</summary>
    public Corners? Four(string key) =>
        Number(key, "LF") is { } lf && Number(key, "RF") is { } rf && Number(key, "LR") is { } lr && Number(key, "RR") is { } rr ? new(lf, rf, lr, rr) : null;

    /// <summary>With one value; null takes it out.</summary>
    public SheetContent With(SheetSlot slot, SheetValue? value) => new(value is { } v ? values.SetItem(slot, v) : values.Remove(slot));

    /// <summary>With everything that another one has.</summary>
    public SheetContent With(SheetContent other) => new(values.SetItems(other.values));

    public static SheetContent Of(IEnumerable<KeyValuePair<SheetSlot, SheetValue>> values) => new(ImmutableSortedDictionary.CreateRange(values));

    public bool Equals(SheetContent? other) => other is not null && Count == other.Count && values.All(v => other[v.Key] is { } same && v.Value.IsSameAs(same));

    public override bool Equals(object? obj) => Equals(obj as SheetContent);

    // Equal values may differ in their last bits.
    public override int GetHashCode() => Count;
}
