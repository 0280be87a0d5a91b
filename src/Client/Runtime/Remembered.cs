using System.Text.Json;
using System.Text.Json.Serialization;

namespace ScaleLink.Client.Runtime;

/// <summary>What the terminal remembers of the last command that said it: the name for the record, the daemon, and the units.</summary>
/// <param name="Who">Name beside everything that goes on record; absent when none was given yet.</param>
/// <param name="Daemon">Address of the daemon; absent when none was given yet.</param>
/// <param name="Units">What loads and lengths are shown in: "kg-mm" or "lb-in"; absent when none was given yet.</param>
internal sealed record Remembered(string? Who = null, string? Daemon = null, string? Units = null);

/// <summary>The file that it stands in. One that cannot be read or written is as good as none: nothing depends on it.</summary>
internal sealed class Memory(string path)
{
    private const int Longest = 200;

    /// <summary>In the user's folder for settings.</summary>
    public static Memory OfThisUser() =>
        new(Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.ApplicationData, Environment.SpecialFolderOption.DoNotVerify), "scalelink", "terminal.json"));

    public Remembered Read()
    {
        try
        {
            var told = JsonSerializer.Deserialize(File.ReadAllText(path), MemoryJson.Default.Remembered) ?? new();
            return new(Clean(told.Who), Clean(told.Daemon), Clean(told.Units));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException or NotSupportedException)
        {
            return new();
        }
    }

    /// <summary>Keeps what was said now, beside what was said before.</summary>
    public void Keep(string? who, string? daemon, string? units)
    {
        var before = Read();
        var now = new Remembered(who ?? before.Who, daemon ?? before.Daemon, units ?? before.Units);
        if (now == before)
            return;
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, JsonSerializer.Serialize(now, MemoryJson.Default.Remembered));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The next command asks again.
        }
    }

    private static string? Clean(string? text) => string.IsNullOrWhiteSpace(text) ? null : PeerText.Clean(text, Longest);
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull, WriteIndented = true)]
[JsonSerializable(typeof(Remembered))]
internal sealed partial class MemoryJson : JsonSerializerContext;
