using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace ScaleLink.Client.Runtime;

/// <summary>Writing lines that a reader at the other end of a pipe gets at once.</summary>
internal static class ShellWriting
{
    public static void WriteJson<T>(this Shell shell, T value, JsonTypeInfo<T> type) => shell.WriteLine(JsonSerializer.Serialize(value, type));

    public static void WriteLine(this Shell shell, string line)
    {
        shell.Out.WriteLine(line);
        shell.Out.Flush();
    }

    /// <summary>A line with the time before it, UTC.</summary>
    public static void WriteDated(this Shell shell, string line) => shell.WriteLine($"{shell.Time.GetUtcNow():yyyy-MM-ddTHH:mm:ssZ} {line}");
}
