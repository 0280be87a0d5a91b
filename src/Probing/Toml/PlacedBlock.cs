using System.Globalization;
using ScaleLink.Probing.Loading;
using ScaleLink.Probing.Recognition;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Probing.Toml;

/// <summary>
/// Writes a device as a block of the bay file once its load cells are known. No sensitivity is guessed: what does not say mass gives its first load when it
/// has been calibrated.
/// </summary>
internal static class PlacedBlock
{
    /// <summary>A [[pads]] block.</summary>
    /// <param name="finding">The port.</param>
    /// <param name="found">The device on it.</param>
    /// <param name="corner">LF, RF, LR or RR.</param>
    /// <param name="cells">Where its cells stand in what it says; may be empty for pad frames, which hold nothing else.</param>
    /// <param name="capacityKg">For a pad that cannot say what it may carry, kg.</param>
    public static string Of(PortFinding finding, Found found, string corner, IReadOnlyList<NumberPlace> cells, double? capacityKg)
    {
        IEnumerable<string> own = found switch
        {
            FoundPadFrames frames => [.. SerialNumber(frames.SerialNumber), .. frames.CapacityKg is null ? Capacity(capacityKg) : []],
            FoundText text => [.. BayBlock.Lines(text.Taking([.. cells.Select(c => c.At + 1)]) ?? text), .. Capacity(capacityKg)],
            FoundSlave slave => [.. BayBlock.Bus(finding, slave), .. Capacity(capacityKg), .. Registers(slave, cells)],
            _ => [],
        };
        return string.Join('\n', [$"# {corner}: {finding.Port}, {found.Summary}", "[[pads]]", .. BayBlock.Link(finding, corner), .. own]);
    }

    private static IEnumerable<string> Registers(FoundSlave slave, IReadOnlyList<NumberPlace> cells)
    {
        var table = slave.Readable!;
        yield return $"# Registers {Text(table.At)} to {Text(table.At + table.Count - 1)} answered; these moved when the pad was stepped on. Compare them with the device's manual,";
        yield return "# which may name registers of tilt, temperature and status as well.";
        foreach (var (cell, place) in cells.Index())
        {
            yield return "[[pads.registers]]";
            yield return "means = \"load\"";
            yield return $"at = {Text(table.At + place.At)}";
            yield return $"type = \"{Type(place.Form)}\"";
            if (place.Form is NumberForm.S32LowFirst or NumberForm.F32LowFirst)
                yield return "word_order = \"low-first\"";
            if (table.Table == ModbusFunction.ReadInputRegisters)
                yield return "table = \"input\"";
            if (cells.Count > 1)
                yield return $"cell = {Text(cell + 1)}";
        }
    }

    private static string Type(NumberForm form) => form switch
    {
        NumberForm.S32HighFirst or NumberForm.S32LowFirst => "s32",
        NumberForm.F32HighFirst or NumberForm.F32LowFirst => "f32",
        _ => "s16",
    };

    private static string[] SerialNumber(string? serial) => serial is null ? [] : [$"serial_number = {TomlText.Quoted(serial)}"];

    private static string[] Capacity(double? kg) => kg is { } known ? [$"capacity_kg = {known.ToString("0.###", CultureInfo.InvariantCulture)}"] : [];

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
