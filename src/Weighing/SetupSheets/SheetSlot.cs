namespace ScaleLink.Weighing.SetupSheets;

/// <summary>One place on a setup sheet that holds a value: a field, and where. Written "springs.rate.LF", "bars.step.front", "fuel.fill".</summary>
/// <param name="Key">Of the field.</param>
/// <param name="Place">A corner, "front" or "rear", a name that the crew gave, or nothing.</param>
readonly record struct SheetSlot(string Key, string Place) : IComparable<SheetSlot>
{
    static readonly string[] PlaceOrder = ["", "front", "rear", "LF", "RF", "LR", "RR"];

    /// <summary>Null: a later version wrote it.</summary>
    public SheetField? Field => SheetFields.Find(Key);

    /// <summary>For people, such as "Spring rate LF".</summary>
    public string Words => Place.Length == 0 ? Field?.Words ?? Key : $"{Field?.Words ?? Key} {Place}";

    /// <summary>The slot that a text names, whether this version knows the field or not; null when it names none.</summary>
    public static SheetSlot? Of(string text)
    {
        var parts = text.Split('.', 3);
        return parts.Length < 2 || parts.Any(p => p.Length == 0) ? null : new(string.Join('.', parts[..2]), parts.Length == 3 ? parts[2] : "");
    }

    public int CompareTo(SheetSlot other) =>
        SheetFields.Order(Key).CompareTo(SheetFields.Order(other.Key)) is not 0 and var byField ? byField
        : string.CompareOrdinal(Key, other.Key) is not 0 and var byKey ? byKey
        : Rank(Place).CompareTo(Rank(other.Place)) is not 0 and var byPlace ? byPlace
        : string.CompareOrdinal(Place, other.Place);

    public override string ToString() => Place.Length == 0 ? Key : $"{Key}.{Place}";

    static int Rank(string place) => Array.IndexOf(PlaceOrder, place) is >= 0 and var rank ? rank : PlaceOrder.Length;
}
