using System.Text.Json;
using System.Text.Json.Serialization;

namespace ScaleLink.Measure.Sentences;

/// <summary>In JSON for other programs and in records a sentence is its text, in kg and mm.</summary>
public sealed class SentenceJsonConverter : JsonConverter<Sentence>
{
    /// <inheritdoc/>
    public override Sentence Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetString();

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, Sentence value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStringValue(value.ToString());
    }
}
