using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;
using ScaleLink.Protocol.PadFrames;
using ScaleLink.Protocol.Readings;

namespace ScaleLink.Protocol.TextLines;

/// <summary>
/// What a line looks like, as a .NET regular expression with named groups: <c>load</c> (or <c>load1</c> to <c>load8</c>), <c>pitch</c>,
/// <c>roll</c>, <c>temperature</c>, <c>check</c>; and <c>over</c>, whose presence says that the load is beyond the device's range. It has to fit the whole line, blanks at both ends aside. Matching takes time in
/// proportion to the line, whatever the pattern.
/// </summary>
sealed class LinePattern
{
    const string CheckGroup = "check";
    const string OverGroup = "over";
    const RegexOptions Options = RegexOptions.NonBacktracking | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture;

    readonly Regex _regex;
    readonly IReadOnlyList<(string Group, FieldRule Rule)> _fields;
    readonly LineChecksum _checksum;

    LinePattern(Regex regex, IReadOnlyList<(string, FieldRule)> fields, LineChecksum checksum) =>
        (_regex, _fields, _checksum) = (regex, fields, checksum);

    /// <summary>The numbers that a line gives.</summary>
    public IEnumerable<FieldRule> Rules => _fields.Select(known => known.Rule);

    /// <summary>Whether a changed digit shows.</summary>
    public bool IsChecked => _checksum != LineChecksum.None;

    /// <summary>Makes a pattern, or says what is wrong with it.</summary>
    /// <param name="pattern">The regular expression.</param>
    /// <param name="unit">Unit of the loads.</param>
    /// <param name="scale">A load times this is in <paramref name="unit"/>.</param>
    /// <param name="checksum">What the group <c>check</c> holds.</param>
    /// <param name="made">The pattern.</param>
    /// <param name="problem">What is wrong.</param>
    public static bool TryCreate(
        string pattern, FieldUnit unit, double scale, LineChecksum checksum, [NotNullWhen(true)] out LinePattern? made, out string problem)
    {
        made = null;
        problem = "";
        Regex regex;
        try
        {
            regex = new Regex($"^(?:{pattern})$", Options);
        }
        catch (Exception e) when (e is ArgumentException or NotSupportedException)
        {
            problem = e.Message;
            return false;
        }

        var names = regex.GetGroupNames().Where(name => name != "0").ToList();
        var fields = names.Where(name => name is not (CheckGroup or OverGroup)).Select(name => (Group: name, Rule: RuleOf(name, unit, scale))).ToList();
        if (fields.Find(field => field.Rule is null).Group is { } stranger)
            problem = $"no group is called {stranger}; the groups are load, load1 to load{PadReading.MaxCells}, pitch, roll, temperature, over and check";
        else if (fields.Count == 0)
            problem = "it has no group that gives a number, such as (?<load>[-+0-9.]+)";
        else if ((checksum != LineChecksum.None) != names.Contains(CheckGroup))
            problem = checksum == LineChecksum.None ? "it has a group check, but no checksum is named" : "a checksum needs a group check";
        else
            problem = FieldSet.Problems([.. fields.Select(field => field.Rule!)]).FirstOrDefault() ?? "";
        if (problem.Length == 0)
            made = new LinePattern(regex, [.. fields.Select(field => (field.Group, field.Rule!))], checksum);
        return made is not null;
    }

    /// <summary>Reads a line without its end. False when it does not fit, a number is none, or its checksum is wrong.</summary>
    public bool TryRead(string line, out PadReading reading)
    {
        reading = default;
        var match = _regex.Match(line);
        if (!match.Success)
            return false;
        foreach (var (group, rule) in _fields)
        {
            if (!TryNumber(match.Groups[group], out var number))
                return false;
            rule.Apply(number, ref reading);
        }

        // A device's sum is its first cell's, as with a status word.
        if (match.Groups[OverGroup].Success)
            reading.Status |= PadStatus.Cell0AtLimit;

        return _checksum == LineChecksum.None || LineXor.IsGood(line, match.Groups[CheckGroup].Index, match.Groups[CheckGroup].ValueSpan);
    }

    // Scales print blanks between sign and digits, and a comma where their country does.
    static bool TryNumber(Group group, out double number) =>
        double.TryParse(group.Value.Replace(" ", "", StringComparison.Ordinal).Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out number);

    static FieldRule? RuleOf(string group, FieldUnit unit, double scale) => group switch
    {
        "load" => Load(0, unit, scale),
        ['l', 'o', 'a', 'd', >= '1' and <= '8'] => Load(group[4] - '1', unit, scale),
        "pitch" => new FieldRule { Meaning = FieldMeaning.Pitch, Unit = FieldUnit.Degree },
        "roll" => new FieldRule { Meaning = FieldMeaning.Roll, Unit = FieldUnit.Degree },
        "temperature" => new FieldRule { Meaning = FieldMeaning.Temperature, Unit = FieldUnit.Celsius },
        _ => null,
    };

    static FieldRule Load(int cell, FieldUnit unit, double scale) =>
        new() { Meaning = FieldMeaning.Load, Unit = unit, Scale = scale, Cell = cell };
}
