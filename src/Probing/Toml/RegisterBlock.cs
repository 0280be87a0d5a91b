using System.Globalization;
using ScaleLink.Probing.Recognition;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Probing.Toml;

/// <summary>The registers of a slave as tables of the bay file: the likeliest number as the load, the others as comments to be taken up.</summary>
internal static class RegisterBlock
{
    public static IEnumerable<string> Of(FoundSlave slave)
    {
        if (slave.Readable is not { } table)
            return Table("holding", new RegisterNumber(0, "s16", false), 1, "  # not known: no register could be read");
        var numbers = table.Numbers;
        if (numbers.Count == 0)
            return Table(table.TableName, new RegisterNumber(table.At, table.Count >= 2 ? "s32" : "s16", false), 1, "  # not known: nothing moved");
        var alike = numbers.Skip(1).Where(n => (n.Type, n.IsLowFirst) == (numbers[0].Type, numbers[0].IsLowFirst)).ToList();
        return [.. Table(table.TableName, numbers[0], 1, "  # by how it moves; not known: compare with the manual"),
            .. alike.Count > 0 ? new[] { "# Others move alike. If they are the cells of this pad, take them up too: one cell alone is a part of the load." } : [],
            .. alike.SelectMany((number, k) => Table(table.TableName, number, k + 2, "").Select(line => $"# {line}"))];
    }

    /// <summary>As another master asks for them.</summary>
    public static IEnumerable<string> Of(ModbusRequest asked) =>
        Table(asked.Function == ModbusFunction.ReadInputRegisters ? "input" : "holding", new RegisterNumber(asked.Address, asked.Count >= 2 ? "s32" : "s16", false), 1, "  # not known: as the device's manual says");

    private static IEnumerable<string> Table(string table, RegisterNumber number, int cell, string remark) =>
    [
        "[[pads.registers]]",
        "means = \"load\"",
        $"at = {number.At.ToString(CultureInfo.InvariantCulture)}{remark}",
        $"type = \"{number.Type}\"",
        .. table == "input" ? new[] { "table = \"input\"" } : [],
        .. number.IsLowFirst ? new[] { "word_order = \"low-first\"" } : [],
        .. cell > 1 ? new[] { $"cell = {cell.ToString(CultureInfo.InvariantCulture)}" } : [],
    ];
}
