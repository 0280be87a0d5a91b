using ScaleLink.Api.V1;

namespace ScaleLink.Board.SetupSheets;

/// <summary>The values of a sheet as the page lays them out: a row for each field, its places beside each other.</summary>
/// <param name="Field">What it is.</param>
/// <param name="Slots">Its places and what stands there; null: nothing.</param>
internal sealed record SheetRow(SheetField Field, IReadOnlyList<(string Slot, string Place, SheetValue? Value)> Slots)
{
    private static readonly string[] Corners = ["LF", "RF", "LR", "RR"], Axles = ["front", "rear"];

    /// <summary>Rows of a part of the sheet, filled or not.</summary>
    public static IEnumerable<SheetRow> Of(IEnumerable<SheetField> fields, IReadOnlyCollection<SheetValue> values) => fields.Select(field =>
    {
        string[] places = field.Scope switch
        {
            SheetScope.Corner => Corners,
            SheetScope.Axle => Axles,
            SheetScope.Named => [.. values.Where(v => v.Slot.StartsWith($"{field.Key}.", StringComparison.Ordinal)).Select(v => v.Slot[(field.Key.Length + 1)..])],
            _ => [""],
        };
        return new SheetRow(field, [.. places.Select(place => At(field, place, values))]);
    });

    private static (string, string, SheetValue?) At(SheetField field, string place, IEnumerable<SheetValue> values)
    {
        var slot = place.Length == 0 ? field.Key : $"{field.Key}.{place}";
        return (slot, place, values.FirstOrDefault(v => v.Slot == slot));
    }
}
