using System.Text.Json;

namespace ScaleLink.Weighing.Documents;

/// <summary>
/// One object of a JSON document, read field by field. Every mistake is noted with its place and reading goes on, so that
/// all are told at once. Comments and trailing commas are allowed: people write these files.
/// </summary>
sealed class JsonBlock
{
    public static readonly JsonReaderOptions ReaderOptions = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };

    readonly Dictionary<string, JsonElement> fields = new(StringComparer.Ordinal);
    readonly HashSet<string> asked = new(StringComparer.Ordinal);
    readonly DocumentNotes notes;

    JsonBlock(JsonElement element, string place, DocumentNotes notes)
    {
        (Place, this.notes) = (place, notes);
        foreach (var field in element.EnumerateObject())
            if (!fields.TryAdd(field.Name, field.Value))
                Note(CarCodes.UnknownField, field.Name, $"{At(field.Name)} stands twice.", "Take one of them out.");
    }

    public string Place { get; }

    /// <summary>The whole document; null when it is no JSON object.</summary>
    public static JsonBlock? Open(string text, DocumentNotes notes)
    {
        try
        {
            using var document = JsonDocument.Parse(text, new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
            if (document.RootElement.ValueKind == JsonValueKind.Object)
                return new(document.RootElement.Clone(), "", notes);
            notes.Add(CarCodes.NotJson, "", "The document is no JSON object.", "Begin with { and end with }.");
        }
        catch (JsonException e)
        {
            notes.Add(new Diagnostic(CarCodes.NotJson, $"This is not JSON: {e.Message}", "Look at that line for a missing comma, quote or brace.") { Line = (int?)e.LineNumber + 1 });
        }

        return null;
    }

    public bool Has(string key) => fields.ContainsKey(key);

    public string At(string key) => Place.Length == 0 ? key : $"{Place}.{key}";

    public void Note(Code code, string key, string message, string remedy) => notes.Add(code, At(key), message, remedy);

    public void Missing(string key, string example) => Note(CarCodes.MissingField, key, $"{At(key)} is missing.", $"Add \"{key}\": {example}.");

    public string? Text(string key) => Read(key, "a text in quotes", e => e.ValueKind == JsonValueKind.String ? e.GetString() : null);

    public double? Number(string key) => Read<double?>(key, "a number", e => e.ValueKind == JsonValueKind.Number ? e.GetDouble() : null);

    public int? Whole(string key) => Read<int?>(key, "a whole number", e => e.ValueKind == JsonValueKind.Number && e.TryGetInt32(out var n) ? n : null);

    public bool? Flag(string key) => Read<bool?>(key, "true or false", e => e.ValueKind is JsonValueKind.True or JsonValueKind.False ? e.GetBoolean() : null);

    public JsonBlock? Block(string key) => Read(key, "a block in braces", e => e.ValueKind == JsonValueKind.Object ? new JsonBlock(e, At(key), notes) : null);

    public Corner? Corner(string key) => Read<Corner?>(key, "one of \"LF\", \"RF\", \"LR\", \"RR\"",
        e => e.ValueKind == JsonValueKind.String && Enum.TryParse<Corner>(e.GetString(), out var corner) && Enum.IsDefined(corner) ? corner : null);

    /// <summary>The blocks of a list; none when it is left out.</summary>
    public IReadOnlyList<JsonBlock> List(string key)
    {
        asked.Add(key);
        if (!fields.TryGetValue(key, out var list))
            return [];
        if (list.ValueKind == JsonValueKind.Array && list.EnumerateArray().All(e => e.ValueKind == JsonValueKind.Object))
            return [.. list.EnumerateArray().Select((e, i) => new JsonBlock(e, $"{At(key)}[{i}]", notes))];
        Note(CarCodes.WrongKind, key, $"{At(key)} is not a list of blocks.", "Write [ { ... }, { ... } ].");
        return [];
    }

    /// <summary>The field as it is, whatever its kind.</summary>
    public JsonElement? Raw(string key)
    {
        asked.Add(key);
        return fields.TryGetValue(key, out var value) ? value : null;
    }

    /// <summary>Notes every field that nobody asked for: a misspelt one must not pass as a default.</summary>
    public void Finish()
    {
        foreach (var key in fields.Keys.Where(k => !asked.Contains(k)))
            Note(CarCodes.UnknownField, key, $"{At(key)} is not known here.", $"Known: {string.Join(", ", asked.Order())}.");
    }

    T? Read<T>(string key, string wanted, Func<JsonElement, T?> convert)
    {
        asked.Add(key);
        if (!fields.TryGetValue(key, out var element))
            return default;
        var value = convert(element);
        if (value is null)
            Note(CarCodes.WrongKind, key, $"{At(key)} = {Short(element)} is not {wanted}.", $"Write {wanted}.");
        return value;
    }

    static string Short(JsonElement element) => element.GetRawText() is { Length: > 40 } text ? text[..40] + "..." : element.GetRawText();
}
