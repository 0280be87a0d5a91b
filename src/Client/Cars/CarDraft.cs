using System.Text.Json;
using System.Text.Json.Nodes;

namespace ScaleLink.Client.Cars;

/// <summary>Answers of questions that were not all answered yet, in a file beside the one that comes of them. Written after every answer: whatever ends the program loses none.</summary>
internal sealed class CarDraft(string carFile)
{
    /// <summary>Where it stands.</summary>
    public string Path { get; } = carFile + ".draft";

    /// <summary>The answers by key; empty when there is no draft, absent when there is one that cannot be read.</summary>
    public Dictionary<string, string>? Read()
    {
        try
        {
            return File.Exists(Path) ? JsonNode.Parse(File.ReadAllText(Path))!.AsObject().ToDictionary(p => p.Key, p => p.Value!.GetValue<string>()) : [];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException or InvalidOperationException or FormatException or NullReferenceException or ArgumentException)
        {
            return null;
        }
    }

    /// <summary>Keeps them; false when that is not possible. Another file takes the place of the old one whole.</summary>
    public bool Keep(IEnumerable<KeyValuePair<string, string>> answers)
    {
        var now = new JsonObject(answers.Select(a => KeyValuePair.Create(a.Key, (JsonNode?)a.Value)));
        try
        {
            File.WriteAllText(Path + ".new", now.ToJsonString());
            File.Move(Path + ".new", Path, overwrite: true);
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    /// <summary>The car file stands: it is not needed any more.</summary>
    public void Remove()
    {
        try
        {
            File.Delete(Path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It is taken up by nobody as long as the car file is there.
        }
    }
}
