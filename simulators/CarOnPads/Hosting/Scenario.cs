using System.Text.Json;
using System.Text.Json.Nodes;
using CarOnPads.Bench;
using CarOnPads.Control;
using CarOnPads.Runtime;

namespace CarOnPads.Hosting;

/// <summary>A list of commands with their times, checked completely before anything happens.</summary>
sealed class Scenario
{
    readonly List<(double At, Deed Deed)> _deeds = [];

    Scenario()
    {
    }

    /// <summary>Reads a file.</summary>
    /// <exception cref="SimulatorException">CP-106 unreadable or no list; CP-2xx a command is wrong: the message says which.</exception>
    public static Scenario Read(string path)
    {
        try
        {
            return Parse(File.ReadAllText(path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new SimulatorException("CP-106", $"The scenario {path} cannot be read: {e.Message}", "Check the path and its permissions.");
        }
    }

    /// <summary>Reads a text.</summary>
    /// <exception cref="SimulatorException">As for <see cref="Read"/>.</exception>
    public static Scenario Parse(string json)
    {
        try
        {
            using var document = JsonDocument.Parse(json, new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
            if (document.RootElement.ValueKind != JsonValueKind.Array)
                throw new JsonException("it is no list");
            var scenario = new Scenario();
            foreach (var item in document.RootElement.EnumerateArray())
                scenario.Add(item);
            return scenario;
        }
        catch (JsonException e)
        {
            throw new SimulatorException("CP-106", $"This is no scenario: {e.Message}", "A scenario is a JSON list of objects with \"at\" and \"do\".");
        }
    }

    /// <summary>Puts all commands into the bay's timetable. What goes wrong later is told to <paramref name="complain"/>.</summary>
    public void Schedule(Bay bay, Action<SimulatorException> complain)
    {
        foreach (var (at, deed) in _deeds)
            bay.Schedule(at, b =>
            {
                try
                {
                    deed(b, new JsonObject());
                }
                catch (SimulatorException e)
                {
                    complain(e);
                }
            });
    }

    void Add(JsonElement item)
    {
        try
        {
            var deed = CommandTable.Parse(item, "at");
            if (!item.TryGetProperty("at", out var at) || !at.TryGetDouble(out var seconds) || seconds < 0)
                throw new SimulatorException("CP-203", "The field at is no number of seconds from 0.", "Give at: seconds from the start.");
            _deeds.Add((seconds, deed));
        }
        catch (SimulatorException e)
        {
            throw new SimulatorException(e.Code, $"Scenario, entry {_deeds.Count + 1}: {e.Message}", e.Remedy);
        }
    }
}
