using System.Text;
using System.Text.Json;

namespace ScaleLink.Weighing.Documents;

/// <summary>On which line of a JSON text each field stands.</summary>
sealed class JsonLines
{
    readonly Dictionary<string, int> lines = new(StringComparer.Ordinal);

    public JsonLines(string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        var reader = new Utf8JsonReader(bytes, JsonBlock.ReaderOptions);
        try
        {
            Read(ref reader, bytes);
        }
        catch (JsonException)
        {
            // What comes after broken syntax has no place.
        }
    }

    /// <summary>From 1; null where the document has no such place: then the nearest block around it.</summary>
    public int? Of(string place)
    {
        while (true)
        {
            if (lines.TryGetValue(place, out var line))
                return line;
            var end = place.LastIndexOfAny(['.', '[']);
            if (end <= 0)
                return null;
            place = place[..end];
        }
    }

    void Read(ref Utf8JsonReader reader, byte[] bytes)
    {
        // One level for each open object (its present field) or list (its present index).
        var levels = new Stack<(string Path, int Index)>();
        var (name, counted, line) = ("", 0L, 1);
        while (reader.Read())
        {
            for (; counted < reader.TokenStartIndex; counted++)
                line += bytes[counted] == '\n' ? 1 : 0;
            if (reader.TokenType == JsonTokenType.PropertyName)
            {
                name = Join(levels.Count > 0 ? levels.Peek().Path : "", reader.GetString()!);
                lines.TryAdd(name, line);
                continue;
            }

            if (reader.TokenType is JsonTokenType.EndObject or JsonTokenType.EndArray)
            {
                levels.Pop();
                continue;
            }

            if (levels.Count > 0 && levels.Peek().Index >= 0)
            {
                var (list, index) = levels.Pop();
                name = $"{list}[{index}]";
                lines.TryAdd(name, line);
                levels.Push((list, index + 1));
            }

            if (reader.TokenType is JsonTokenType.StartObject or JsonTokenType.StartArray)
                levels.Push((name, reader.TokenType == JsonTokenType.StartArray ? 0 : -1));
        }
    }

    static string Join(string path, string name) => path.Length == 0 ? name : $"{path}.{name}";
}
