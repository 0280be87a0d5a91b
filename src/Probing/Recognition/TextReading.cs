using System.Text.RegularExpressions;
using ScaleLink.Protocol.Readings;
using ScaleLink.Protocol.TextLines;

namespace ScaleLink.Probing.Recognition;

/// <summary>Lines that have a shape in common, and how they are read with one number or another for the load.</summary>
internal sealed class TextReading(HeardLines said, LineShape shape, bool isChecked, IReadOnlyList<FoundNumber> numbers)
{
    private const double LeastFitting = 0.9;
    private static readonly Dictionary<string, FieldUnit> Units = new() { ["kg"] = FieldUnit.Kilogram, ["lb"] = FieldUnit.Pound, ["g"] = FieldUnit.Gram };

    /// <summary>The device with these numbers, counted from 1, for its load: several are the cells of one pad. Nothing when the lines cannot be read so.</summary>
    public FoundText? Take(IReadOnlyList<int> loads)
    {
        if (loads.Count is 0 or > PadReading.MaxCells || loads.Select(l => numbers[l - 1].Unit).Distinct().Count() > 1)
            return null;
        var unit = numbers[loads[0] - 1].Unit is { } name ? Units[name] : default;
        var pattern = shape.ToPattern(number => GroupOf(loads, number));
        var separator = isChecked ? Regex.Escape(said.Lines[0][^3].ToString()) : "";
        var checkedPattern = $"{pattern}{separator}(?<check>[0-9A-Fa-f]{{2}})";
        var isXor = isChecked && said.Fitting(checkedPattern, unit, LineChecksum.Xor) >= LeastFitting * said.Lines.Count;
        var proposed = isXor ? checkedPattern : isChecked ? $"{pattern}{separator}[0-9A-Fa-f]{{2}}" : pattern;
        var fitting = said.Fitting(proposed, unit, isXor ? LineChecksum.Xor : LineChecksum.None);
        return fitting < LeastFitting * said.Lines.Count ? null : new FoundText
        {
            Reading = this,
            Lines = said.Lines,
            Fitting = fitting,
            Numbers = numbers,
            Load = loads[0],
            Why = "it was chosen",
            Pattern = proposed,
            Others = new Dictionary<int, FoundText>(),
            HasXor = isXor,
            End = said.Only,
            States = shape.States,
            NetAndGross = shape.NetAndGross,
            MixesNetAndGross = shape.MixesNetAndGross,
        };
    }

    // An angle counts only with the other one.
    private string? GroupOf(IReadOnlyList<int> loads, int number)
    {
        var cell = loads.ToList().IndexOf(number + 1);
        if (cell >= 0)
            return loads.Count == 1 ? "load" : $"load{cell + 1}";
        return numbers[number].Meaning is not ("pitch" or "roll") || numbers.Any(n => n.Meaning == "pitch") && numbers.Any(n => n.Meaning == "roll") ? numbers[number].Meaning : null;
    }
}
