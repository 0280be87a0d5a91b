using System.Text.Json;
using System.Text.Json.Serialization;

namespace ScaleLink.Measure.Diagnostics;

/// <summary>A diagnostic in JSON for other programs: code, message, remedy, and where and line when there are any.</summary>
public class DiagnosticJsonConverter : JsonConverter<Diagnostic>
{
    private readonly string _remedy, _where;
    private readonly bool _tellsAbsent;

    /// <summary>With the names of today.</summary>
    public DiagnosticJsonConverter()
        : this("remedy", "where", tellsAbsent: false)
    {
    }

    /// <summary>With names of its own, for what is kept under older ones.</summary>
    /// <param name="remedy">Name of the remedy.</param>
    /// <param name="where">Name of the place.</param>
    /// <param name="tellsAbsent">An empty place and no line are written too.</param>
    protected DiagnosticJsonConverter(string remedy, string where, bool tellsAbsent) => (_remedy, _where, _tellsAbsent) = (remedy, where, tellsAbsent);

    /// <inheritdoc/>
    public override Diagnostic Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var fields = JsonElement.ParseValue(ref reader);
        string Text(string name) => fields.TryGetProperty(name, out var value) ? value.GetString() ?? "" : "";
        return new(Code.Read(Text("code")), Text("message"), Text(_remedy))
        {
            Where = Text(_where),
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
        writer.WriteString("message", value.Message.ToString());
        writer.WriteString(_remedy, value.Remedy.ToString());
        if (_tellsAbsent || value.Where.Length > 0)
            writer.WriteString(_where, value.Where);
        if (value.Line is { } line)
            writer.WriteNumber("line", line);
        else if (_tellsAbsent)
            writer.WriteNull("line");
        writer.WriteEndObject();
    }
}
