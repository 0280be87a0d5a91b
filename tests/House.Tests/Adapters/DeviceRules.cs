using System.Text.RegularExpressions;

namespace House.Tests.Adapters;

/// <summary>A device as rules see it: its own keys, and those of each device above it.</summary>
internal sealed record Device(string Action, string Subsystem, string[] Files, params IReadOnlyDictionary<string, string>[] Chain);

/// <summary>
/// As much of the language of udev rules as the project's own rule uses. Source: the manual page udev(7): a line matches when all of its
/// comparisons do; ATTRS, KERNELS and SUBSYSTEMS of one line have to fit one and the same device of the chain.
/// </summary>
internal sealed partial class DeviceRules
{
    private static readonly string[] ChainKeys = ["ATTRS", "KERNELS", "SUBSYSTEMS"];
    private readonly List<List<(string Key, string Name, string Operator, string Value)>> _lines;

    public DeviceRules(string text) =>
        _lines = [.. text.Split('\n').Select(l => l.Trim()).Where(l => l.Length > 0 && l[0] != '#').Select(Parse)];

    /// <summary>What the rules assign to the device.</summary>
    public Dictionary<string, string> Apply(Device device)
    {
        var assigned = new Dictionary<string, string>();
        string? until = null;
        foreach (var line in _lines)
        {
            if (until is not null && line is [("LABEL", _, "=", var label)] && label == until)
                until = null;
            if (until is not null || !Matches(line, device, assigned))
                continue;
            foreach (var (key, name, sign, value) in line.Where(t => t.Operator is "=" or "+="))
            {
                if (key == "GOTO")
                    until = value;
                else if (key != "LABEL")
                    assigned[Full(key, name)] = value;
            }
        }

        Assert.True(until is null, $"There is no label {until}.");
        return assigned;
    }

    private static bool Matches(List<(string Key, string Name, string Operator, string Value)> line, Device device, Dictionary<string, string> assigned)
    {
        var comparisons = line.Where(t => t.Operator is "==" or "!=").ToList();
        var chain = comparisons.Where(t => ChainKeys.Contains(t.Key)).ToList();
        return comparisons.Except(chain).All(t => Fits(t.Value, Own(t.Key, t.Name, device, assigned)) == (t.Operator == "=="))
            && (chain.Count == 0 || device.Chain.Any(d => chain.All(t => Fits(t.Value, d.GetValueOrDefault(Full(t.Key, t.Name), "")))));
    }

    private static string Own(string key, string name, Device device, Dictionary<string, string> assigned) => key switch
    {
        "ACTION" => device.Action,
        "SUBSYSTEM" => device.Subsystem,
        "ENV" => assigned.GetValueOrDefault(Full(key, name), ""),
        "TEST" => device.Files.Length > 0 ? device.Files[0] : "",
        _ => throw new InvalidOperationException($"No key to compare with is called {key}."),
    };

    private static bool Fits(string alternatives, string value) => alternatives.Split('|').Contains(value);

    private static string Full(string key, string name) => name.Length > 0 ? $"{key}{{{name}}}" : key;

    private static List<(string, string, string, string)> Parse(string line)
    {
        var tokens = Token().Matches(line);
        Assert.Equal(line, string.Join(", ", tokens.Select(t => t.Value)));
        return [.. tokens.Select(t => (t.Groups["key"].Value, t.Groups["name"].Value, t.Groups["sign"].Value, t.Groups["value"].Value))];
    }

    [GeneratedRegex(@"(?<key>[A-Z]+)(?:\{(?<name>[^}]+)\})?(?<sign>==|!=|\+=|=)""(?<value>[^""]*)""")]
    private static partial Regex Token();
}
