using System.Text.Json;
using ScaleLink.Daemon.Journal;
using ScaleLink.Weighing.SetupSheets;

namespace ScaleLink.Daemon.Workflows.SetupSheets;

/// <summary>A version of a setup sheet as it stands in the ledger, under the name of its car: whole, so that it can be read without the ones before.</summary>
/// <param name="Track">Of the sheet.</param>
/// <param name="Driver">Of the sheet.</param>
/// <param name="Version">Written down, and not counted: one that cannot be read must not renumber those after it.</param>
/// <param name="Values">By slot: a number in the base unit of its field, or a text. Those of a later build stay as they are.</param>
/// <param name="Note">What the crew said.</param>
/// <param name="CopiedFrom">In words.</param>
/// <param name="OnCar">The car was set up so when it was saved.</param>
internal sealed record StoredSheet(string Track, string Driver, int Version, IReadOnlyDictionary<string, JsonElement> Values, string Note, string CopiedFrom, bool OnCar)
{
    public static readonly EntryKind<StoredSheet> Kind = new("setup-sheet");

    /// <summary>The values as they are stored.</summary>
    public static IReadOnlyDictionary<string, JsonElement> Stored(SheetContent content) => content.Values.ToDictionary(
        v => v.Key.ToString(), v => v.Value.Number is { } number ? JsonSerializer.SerializeToElement(number) : JsonSerializer.SerializeToElement(v.Value.Text));

    /// <summary>The values.</summary>
    /// <exception cref="InvalidOperationException">One is neither number nor text, or of no slot.</exception>
    public SheetContent Content() => SheetContent.Of(Values.Select(v => KeyValuePair.Create(
        SheetSlot.Of(v.Key) ?? throw new InvalidOperationException($"{v.Key} is no place on a setup sheet"),
        v.Value.ValueKind == JsonValueKind.Number ? SheetValue.Of(v.Value.GetDouble()) : SheetValue.Of(v.Value.GetString()!))));
}

/// <summary>The car was set up as a version says.</summary>
internal sealed record StoredFitting(string Track, string Driver, int Version)
{
    public static readonly EntryKind<StoredFitting> Kind = new("setup-fitted");
}
