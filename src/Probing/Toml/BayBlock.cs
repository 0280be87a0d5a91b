using System.Globalization;
using ScaleLink.Probing.Ports;
using ScaleLink.Probing.Recognition;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Probing.Toml;

/// <summary>Writes what was recognised as a block of the bay file.</summary>
internal static class BayBlock
{
    private const int UsualBaud = 115200;
    private const string Capacity = "capacity_kg = 600  # what the pad may carry: correct it";

    /// <summary>A [[pads]] block that the daemon takes as it is; nothing for what is not known.</summary>
    /// <param name="finding">The port.</param>
    /// <param name="found">What on it is meant.</param>
    /// <param name="corner">LF, RF, LR or RR.</param>
    public static string? Of(PortFinding finding, Found found, string corner)
    {
        IEnumerable<string> own = found switch
        {
            FoundPadFrames { SerialNumber: { } serial } => [$"serial_number = {TomlText.Quoted(serial)}"],
            FoundText text => Text(text),
            FoundSlave { Readable: { } readable } slave => Slave(slave.Slave, readable.Question.Function, 0, readable.Question.Count),
            FoundSlave slave => Slave(slave.Slave, slave.Answers[0].Question.Function, 0, 1),
            FoundTraffic traffic => Slave(traffic.Asked[0].Slave, traffic.Asked[0].Function, traffic.Asked[0].Address, traffic.Asked[0].Count),
            _ => [],
        };
        return found.Protocol is null ? null : string.Join('\n', [.. Link(finding, corner), .. own]);
    }

    internal static List<string> Link(PortFinding finding, string corner)
    {
        List<string> lines = ["[[pads]]", $"corner = {TomlText.Quoted(corner)}", $"link = {TomlText.Quoted(finding.Link)}"];
        if (finding.Baud is { } rate && rate != UsualBaud)
            lines.Add($"baud = {Number(rate)}");
        if (finding.Format.Parity != CharacterFormat.Usual.Parity)
            lines.Add($"parity = {TomlText.Quoted(finding.Format.Parity.ToString().ToLowerInvariant())}");
        if (finding.Format.DataBits != CharacterFormat.Usual.DataBits)
            lines.Add($"data_bits = {Number(finding.Format.DataBits)}");
        if (finding.Format.StopBits != CharacterFormat.Usual.StopBits)
            lines.Add($"stop_bits = {Number(finding.Format.StopBits)}");
        return lines;
    }

    private static IEnumerable<string> Text(FoundText text) =>
    [
        "protocol = \"text-lines\"",
        $"pattern = {TomlText.Literal(text.Pattern)}",
        Capacity,
        .. text.Unit is { } unit ? new[] { $"unit = {TomlText.Quoted(unit)}" } : [],
        .. text.HasXor ? new[] { "checksum = \"xor\"" } : [],
    ];

    // A load in the first registers; which ones hold it, a person knows.
    private static IEnumerable<string> Slave(byte slave, ModbusFunction table, ushort at, int count) =>
    [
        "protocol = \"modbus-rtu\"",
        $"slave = {Number(slave)}",
        Capacity,
        "[[pads.registers]]",
        "means = \"load\"",
        $"at = {Number(at)}",
        $"type = \"{(count >= 2 ? "s32" : "s16")}\"  # as the device's manual says",
        .. table == ModbusFunction.ReadInputRegisters ? new[] { "table = \"input\"" } : [],
    ];

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
