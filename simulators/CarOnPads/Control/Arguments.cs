using System.Text.Json;
using CarOnPads.Physics;
using CarOnPads.Runtime;

namespace CarOnPads.Control;

/// <summary>The fields of one command, read by name and checked. What nobody has asked for at the end is an error.</summary>
sealed class Arguments
{
    readonly Dictionary<string, JsonElement> _fields = [];

    /// <summary>All fields of the object but those named.</summary>
    public Arguments(JsonElement command, params ReadOnlySpan<string> aside)
    {
        foreach (var field in command.EnumerateObject())
            if (!aside.Contains(field.Name))
                _fields[field.Name] = field.Value.Clone();
    }

    public bool Has(string name) => _fields.ContainsKey(name);

    public double Number(string name, double low, double high) =>
        OptionalNumber(name, low, high) ?? throw Missing(name, $"a number from {low} to {high}");

    public double Number(string name, double low, double high, double otherwise) =>
        OptionalNumber(name, low, high) ?? otherwise;

    public double? OptionalNumber(string name, double low, double high)
    {
        if (!Take(name, out var field))
            return null;
        if (field.ValueKind != JsonValueKind.Number || !field.TryGetDouble(out var value))
            throw Wrong(name, "a number");
        return value >= low && value <= high
            ? value
            : throw new SimulatorException("CP-205", $"{name} is {value}; it goes from {low} to {high}.", "Check the unit in the field's name or in docs/simulator.md.");
    }

    public bool Flag(string name, bool otherwise) =>
        Take(name, out var field)
            ? field.ValueKind switch
            {
                JsonValueKind.True => true,
                JsonValueKind.False => false,
                _ => throw Wrong(name, "true or false"),
            }
            : otherwise;

    public bool Flag(string name) => Has(name) ? Flag(name, false) : throw Missing(name, "true or false");

    public string Text(string name) => OptionalText(name) ?? throw Missing(name, "a text");

    public string? OptionalText(string name)
    {
        if (!Take(name, out var field))
            return null;
        return field.ValueKind == JsonValueKind.String ? field.GetString() : throw Wrong(name, "a text");
    }

    public Wheel Wheel(string name = "corner") => ParseWheel(name, Text(name));

    /// <summary>One corner, a list of corners, or all when the field is absent.</summary>
    public Wheel[] Wheels(string name = "corners")
    {
        if (!Take(name, out var field))
            return Enum.GetValues<Wheel>();
        if (field.ValueKind != JsonValueKind.Array)
            throw Wrong(name, "a list of corners");
        return [.. field.EnumerateArray().Select(e => ParseWheel(name, e.ValueKind == JsonValueKind.String ? e.GetString()! : e.GetRawText()))];
    }

    /// <summary>Refuses fields that no one asked for: a misspelt option must not pass in silence.</summary>
    public void RefuseRest()
    {
        foreach (var name in _fields.Keys)
            throw new SimulatorException("CP-206", $"{name} is no field of this command.", "Ask {\"do\":\"help\"} for an example of each command.");
    }

    bool Take(string name, out JsonElement field) => _fields.Remove(name, out field);

    static Wheel ParseWheel(string name, string text) => text switch
    {
        "LF" => Physics.Wheel.LF,
        "RF" => Physics.Wheel.RF,
        "LR" => Physics.Wheel.LR,
        "RR" => Physics.Wheel.RR,
        _ => throw new SimulatorException("CP-204", $"{name}: there is no corner {text}.", "The corners are LF, RF, LR and RR."),
    };

    static SimulatorException Missing(string name, string what) =>
        new("CP-203", $"The field {name} is missing.", $"Give {name}: {what}.");

    static SimulatorException Wrong(string name, string what) =>
        new("CP-203", $"The field {name} is not {what}.", $"Give {name} as {what}.");
}
