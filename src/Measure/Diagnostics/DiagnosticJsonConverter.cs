using System.Text.Json;
using System.Text.Json.Serialization;

namespace ScaleLink.Measure.Diagnostics;

/// <summary>A diagnostic in JSON for other programs: code, message, remedy, and where and line when there are any.</summary>
public sealed class DiagnosticJsonConverter : JsonConverter<Diagnostic>
{
    /// <inheritdoc/>
    public override Diagnostic Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var fields = JsonElement.ParseValue(ref reader);
        string Text(string name) => fields.TryGetProperty(name, out var value) ? value.GetString() ?? "" : "";
        return new(Code.Read(Text("code")), Text("message"), Text("remedy"))
        {
            Where = Text("where"),
            Line = fields.TryGetProperty("line", out var line) && line.ValueKind == JsonValueKind.Number ? line.GetInt32() : null,
        };
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, Diagnostic value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(value);
        writer.WriteStartObject();
        writer.WriteString("code", value.Code.Text);
        writer.WriteString("message", value.Message);
        writer.WriteString("remedy", value.Remedy);
        if (value.Where.Length > 0)
            writer.WriteString("where", value.Where);
        if (value.Line is { } line)
            writer.WriteNumber("line", line);
        writer.WriteEndObject();
    }
}
