using ScaleLink.Protocol.Modbus;
using ScaleLink.Protocol.PadFrames;
using ScaleLink.Protocol.Readings;

namespace ScaleLink.Daemon.Configuration;

/// <summary>Reads one [[pads.registers]] block.</summary>
internal static class RegisterReader
{
    private static readonly Dictionary<string, FieldMeaning> Meanings = Enum.GetValues<FieldMeaning>().ToDictionary(m => m.ToString().ToLowerInvariant());
    private static readonly Dictionary<string, RegisterType> Types = Enum.GetValues<RegisterType>().ToDictionary(t => t.ToString().ToLowerInvariant());
    private static readonly Dictionary<string, FieldUnit> Units = Enum.GetValues<FieldUnit>().ToDictionary(NameOf);

    private static readonly Dictionary<string, ModbusFunction> Tables = new()
    {
        ["holding"] = ModbusFunction.ReadHoldingRegisters,
        ["input"] = ModbusFunction.ReadInputRegisters,
    };

    private static readonly Dictionary<string, WordOrder> Orders = new() { ["high-first"] = WordOrder.HighFirst, ["low-first"] = WordOrder.LowFirst };

    private static readonly Dictionary<string, PadStatus> BitNames = new()
    {
        ["limit"] = PadStatus.Cell0AtLimit,
        ["excitation"] = PadStatus.ExcitationLow,
        ["converter"] = PadStatus.ConverterFault,
        ["tilt"] = PadStatus.TiltFault,
        ["temperature"] = PadStatus.TemperatureFault,
    };

    /// <summary>The number that the block describes; nothing when it is not complete, which has then been noted.</summary>
    public static RegisterField? Read(TomlBlock block)
    {
        var meaning = Required(block, "means", Meanings);
        var at = block.Whole("at", 0, 65535);
        if (!block.Has("at"))
            block.Note(ConfigurationCodes.KeyMissing, block.Line, $"{block.Name}.at is missing.", "Add at = the register's address, counted from 0.");
        var type = Required(block, "type", Types);
        var table = block.Choice("table", Tables) ?? ModbusFunction.ReadHoldingRegisters;
        var order = block.Choice("word_order", Orders) ?? WordOrder.HighFirst;
        var rule = new FieldRule
        {
            Meaning = meaning ?? FieldMeaning.Load,
            Unit = block.Choice("unit", Units) ?? FieldUnits.Default(meaning ?? FieldMeaning.Load),
            Scale = block.Number("scale", -1e9, 1e9) ?? 1,
            Absent = block.Number("absent", double.MinValue, double.MaxValue),
            Cell = (block.Whole("cell", 1, PadReading.MaxCells) ?? 1) - 1,
            Bits = ReadBits(block),
        };
        block.Finish();
        return meaning is null || at is null || type is null ? null : new RegisterField(table, (ushort)at, type.Value, order, rule);
    }

    public static string NameOf(FieldUnit unit) => unit switch
    {
        FieldUnit.Gram => "g",
        FieldUnit.Kilogram => "kg",
        FieldUnit.Pound => "lb",
        FieldUnit.Degree => "deg",
        FieldUnit.Milliradian => "mrad",
        FieldUnit.Celsius => "C",
        FieldUnit.Fahrenheit => "F",
        _ => unit.ToString().ToLowerInvariant(),
    };

    private static T? Required<T>(TomlBlock block, string key, IReadOnlyDictionary<string, T> choices) where T : struct
    {
        var choice = block.Choice(key, choices);
        if (!block.Has(key))
            block.Note(ConfigurationCodes.KeyMissing, block.Line, $"{block.Name}.{key} is missing.", $"Add {key} = one of {string.Join(", ", choices.Keys)}.");
        return choice;
    }

    // "3 excitation, 9 converter"
    private static List<StatusBit> ReadBits(TomlBlock block)
    {
        var bits = new List<StatusBit>();
        foreach (var part in (block.Text("bits") ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (part.Split(' ', StringSplitOptions.RemoveEmptyEntries) is [var place, var name]
                && int.TryParse(place, out var bit) && bit is >= 0 and <= 31 && BitNames.TryGetValue(name, out var means))
                bits.Add(new StatusBit(bit, means));
            else
                block.Note(ConfigurationCodes.ValueUnusable, block.LineOf("bits"), $"{block.Name}.bits: \"{part}\" is no bit and its meaning.", $"Write for instance \"3 excitation, 9 converter\"; meanings: {string.Join(", ", BitNames.Keys)}.");
        }

        return bits;
    }
}
