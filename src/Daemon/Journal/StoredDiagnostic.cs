using System.Text.Json;
using System.Text.Json.Serialization;

namespace ScaleLink.Daemon.Journal;

/// <summary>A diagnostic in the ledger keeps the names that the first ones were written with.</summary>
internal sealed class StoredDiagnostic : JsonConverter<Diagnostic>
{
    public override Diagnostic Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var fields = JsonElement.ParseValue(ref reader);
        string Text(string name) => fields.TryGetProperty(name, out var value) ? value.GetString() ?? "" : "";
        return new(Code.Read(Text("code")), Text("message"), Text("mend"))
        {
            Where = Text("place"),
            Line = fields.TryGetProperty("line", out var line) && line.ValueKind == JsonValueKind.Number ? line.GetInt32() : null,
        };
    }

    public override void Write(Utf8JsonWriter writer, Diagnostic value, JsonSerializerOptions options)
    {
        writer.WriteStartObject();
        writer.WriteString("code", value.Code.Text);
        writer.WriteString("message", value.Message);
        writer.WriteString("mend", value.Remedy);
        writer.WriteString("place", value.Where);
        if (value.Line is { } line)
            writer.WriteNumber("line", line);
        else
            writer.WriteNull("line");
        writer.WriteEndObject();
    }
}
