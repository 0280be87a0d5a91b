using System.Text.Json;
using CarOnPads.Runtime;

namespace CarOnPads.Control;

/// <summary>Every command by name.</summary>
static class CommandTable
{
    static readonly Dictionary<string, Command> s_commands =
        new[] { CrewCommands.All, PadCommands.All, FaultCommands.All, BusCommands.All, AskingCommands.All }
            .SelectMany(group => group)
            .ToDictionary(command => command.Name, StringComparer.Ordinal);

    public static IReadOnlyCollection<Command> All => s_commands.Values;

    /// <summary>Checks a command completely and returns what to do.</summary>
    /// <param name="command">An object with <c>do</c> and the command's fields.</param>
    /// <param name="aside">Fields that belong to somebody else.</param>
    /// <exception cref="SimulatorException">CP-201 to CP-206.</exception>
    public static Deed Parse(JsonElement command, params ReadOnlySpan<string> aside)
    {
        if (command.ValueKind != JsonValueKind.Object)
            throw new SimulatorException("CP-201", "A command is one JSON object.", "For example {\"do\":\"truth\"}.");
        var arguments = new Arguments(command, aside);
        var name = arguments.Text("do");
        if (!s_commands.TryGetValue(name, out var found))
            throw new SimulatorException("CP-202", $"There is no command {name}.", $"The commands are {string.Join(", ", s_commands.Keys)}.");
        var deed = found.Parse(arguments);
        arguments.RefuseRest();
        return deed;
    }

    /// <summary>The same for a line of text.</summary>
    public static Deed Parse(string line)
    {
        try
        {
            using var document = JsonDocument.Parse(line);
            return Parse(document.RootElement);
        }
        catch (JsonException e)
        {
            throw new SimulatorException("CP-201", $"This is no JSON: {e.Message}", "One object a line, for example {\"do\":\"truth\"}.");
        }
    }
}
