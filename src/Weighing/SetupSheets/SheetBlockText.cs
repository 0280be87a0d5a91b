using System.Text.Json.Nodes;

namespace ScaleLink.Weighing.SetupSheets;

/// <summary>Writes a setup sheet as a block of a document; <see cref="SheetBlock"/> gives the same sheet back.</summary>
static class SheetBlockText
{
    public static JsonObject Of(SheetContent content)
    {
        var block = new JsonObject();
        foreach (var field in content.Values.Where(v => v.Key.Field is not null).GroupBy(v => v.Key.Key))
        {
            var about = SheetFields.Find(field.Key)!;
            if (block[about.Group] is not JsonObject part)
                block[about.Group] = part = [];
            part[about.DocumentName] = about.Scope == SheetScope.WholeCar ? Value(field.First().Value)
                : new JsonObject(field.Select(v => KeyValuePair.Create(v.Key.Place, (JsonNode?)Value(v.Value))));
        }

        return block;
    }

    static JsonValue Value(SheetValue value) => value.Number is { } number ? JsonValue.Create(number) : JsonValue.Create(value.Text)!;
}
