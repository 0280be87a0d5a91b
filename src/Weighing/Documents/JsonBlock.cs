using System.Text.Json;

namespace ScaleLink.Weighing.Documents;

/// <summary>One object of a JSON document. Comments and trailing commas are allowed: people write these files.</summary>
sealed class JsonBlock : DocumentBlock<JsonElement>
{
    public static readonly JsonReaderOptions ReaderOptions = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };

    const int LongestName = 80;

    readonly DocumentNotes notes;

    JsonBlock(JsonElement element, string place, DocumentNotes notes) : base(place)
    {
        this.notes = notes;
        foreach (var field in element.EnumerateObject())
            Add(field.Name, field.Value);
    }

    protected override Code UnknownCode => CarCodes.UnknownField;

    protected override Code WrongKindCode => CarCodes.WrongKind;

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

    public override void Note(Code code, string key, Sentence message, Sentence remedy) => notes.Add(code, At(key), message, remedy);

    /// <summary>Takes the value of a field's earlier name, where the document does not have the present one.</summary>
    public void Earlier(string before, string now)
    {
        if (Rename(before, now))
            notes.AddEarlier(At(before), now);
    }

    public void Missing(string key, string example) => Note(CarCodes.MissingField, key, $"{At(key)} is missing.", $"Add \"{key}\": {example}.");

    public string? Text(string key) => Read(key, "a text in quotes", e => e.ValueKind == JsonValueKind.String ? e.GetString() : null);

    /// <summary>A text by which people tell things apart.</summary>
    public string? Name(string key)
    {
        var name = Text(key);
        if (name is not null && !PlainText.IsClean(name, LongestName))
            Note(CarCodes.NameUnprintable, key, $"{At(key)} is longer than {LongestName} signs or has some that do not show, such as escape or a mark that turns the direction of writing.", "Type it anew.");
        return name;
    }

    public double? Number(string key) => Read<double?>(key, "a number", e => e.ValueKind == JsonValueKind.Number ? e.GetDouble() : null);

    public int? Whole(string key) => Read<int?>(key, "a whole number", e => e.ValueKind == JsonValueKind.Number && e.TryGetInt32(out var n) ? n : null);

    public bool? Flag(string key) => Read<bool?>(key, "true or false", e => e.ValueKind is JsonValueKind.True or JsonValueKind.False ? e.GetBoolean() : null);

    public JsonBlock? Block(string key) => Read(key, "a block in braces", e => e.ValueKind == JsonValueKind.Object ? new JsonBlock(e, At(key), notes) : null);

    public Corner? Corner(string key) => Read<Corner?>(key, "one of \"LF\", \"RF\", \"LR\", \"RR\"",
        e => e.ValueKind == JsonValueKind.String && Enum.TryParse<Corner>(e.GetString(), out var corner) && Enum.IsDefined(corner) ? corner : null);

    /// <summary>The blocks of a list; none when it is left out.</summary>
    public IReadOnlyList<JsonBlock> List(string key)
    {
        if (!Ask(key, out var list))
            return [];
        if (list.ValueKind == JsonValueKind.Array && list.EnumerateArray().All(e => e.ValueKind == JsonValueKind.Object))
            return [.. list.EnumerateArray().Select((e, i) => new JsonBlock(e, $"{At(key)}[{i}]", notes))];
        Note(CarCodes.WrongKind, key, $"{At(key)} is not a list of blocks.", "Write [ { ... }, { ... } ].");
        return [];
    }

    /// <summary>The field as it is, whatever its kind.</summary>
    public JsonElement? Raw(string key) => Ask(key, out var value) ? value : null;

    protected override string Shown(JsonElement field) => field.GetRawText() is { Length: > 40 } text ? text[..40] + "..." : field.GetRawText();
}
