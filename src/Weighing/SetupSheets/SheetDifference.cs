namespace ScaleLink.Weighing.SetupSheets;

/// <summary>One value that two setup sheets do not share.</summary>
/// <param name="Slot">Where.</param>
/// <param name="Before">On the first; null: it says nothing there.</param>
/// <param name="After">On the second.</param>
readonly record struct SheetDifference(SheetSlot Slot, SheetValue? Before, SheetValue? After)
{
    /// <summary>All of them, in the order of the sheet.</summary>
    public static IReadOnlyList<SheetDifference> Of(SheetContent first, SheetContent second) =>
    [
        .. first.Values.Concat(second.Values).Select(v => v.Key).Distinct().Order()
            .Select(slot => new SheetDifference(slot, first[slot], second[slot]))
            .Where(d => d.Before is not { } before || d.After is not { } after || !before.IsSameAs(after)),
    ];
}
