using System.Text.Json;
using ScaleLink.Weighing.Documents;

namespace ScaleLink.Weighing.SetupSheets;

/// <summary>
/// A setup sheet as a block of a document: a block for each part, in it a field for each value or for those of several corners. A value is a
/// number in the unit of its field's name, or a text with a unit of its own, such as "400 lb/in".
/// </summary>
static class SheetBlock
{
    /// <summary>Reads it; every mistake is noted.</summary>
    public static SheetContent? Read(JsonBlock? block)
    {
        if (block is null)
            return null;
        var content = SheetContent.Empty;
        foreach (var group in SheetFields.All.GroupBy(f => f.Group))
        {
            if (block.Block(group.Key) is not { } part)
                continue;
            foreach (var field in group)
                content = Field(part, field, content);
            part.Finish();
        }

        block.Finish();
        return content;
    }

    static SheetContent Field(JsonBlock part, SheetField field, SheetContent content)
    {
        if (part.Raw(field.DocumentName) is not { } raw)
            return content;
        // One value for all places, or one for each under the place's name.
        if (raw.ValueKind != JsonValueKind.Object)
            return field.Scope == SheetScope.Named ? Noted(part, field.DocumentName, new(SheetCodes.Value, $"{part.At(field.DocumentName)} is no block of places.", "Write { \"floor\": 10 }."), content)
                : Value(part, field.DocumentName, raw, field.Places.Select(p => new SheetSlot(field.Key, p)), content);
        foreach (var place in raw.EnumerateObject())
        {
            var at = $"{field.DocumentName}.{place.Name}";
            try
            {
                content = Value(part, at, place.Value, SheetNaming.Slots($"{field.Key}.{place.Name}"), content);
            }
            catch (DiagnosticException e)
            {
                Noted(part, at, e.Diagnostics[0], content);
            }
        }

        return content;
    }

    static SheetContent Value(JsonBlock part, string at, JsonElement raw, IEnumerable<SheetSlot> slots, SheetContent content)
    {
        foreach (var slot in slots)
            try
            {
                content = content.With(slot, raw.ValueKind switch
                {
                    JsonValueKind.Number when slot.Field!.Unit is not null => SheetValue.Of(SheetTyped.InRange(slot, raw.GetDouble())),
                    JsonValueKind.String => SheetTyped.Read(slot, raw.GetString()!, Units.Metric),
                    _ => throw new DiagnosticException(new Diagnostic(SheetCodes.Value, $"{part.At(at)} is not of the kind of {slot.Words}.", slot.Field!.Unit is null ? "Write a text in quotes." : "Write a number, or a text with its unit such as \"400 lb/in\".")),
                });
            }
            catch (DiagnosticException e)
            {
                // One mistake, not one for each corner.
                return Noted(part, at, e.Diagnostics[0], content);
            }

        return content;
    }

    static SheetContent Noted(JsonBlock part, string at, Diagnostic mistake, SheetContent content)
    {
        part.Note(mistake.Code, at, mistake.Message, mistake.Remedy);
        return content;
    }
}
