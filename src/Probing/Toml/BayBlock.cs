using System.Globalization;
using ScaleLink.Probing.Ports;
using ScaleLink.Probing.Recognition;

namespace ScaleLink.Probing.Toml;

/// <summary>Writes what was recognised as a block of the bay file. What is not known stands beside it as a comment.</summary>
internal static class BayBlock
{
    private const int UsualBaud = 115200;
    private const int UsualTimeoutMs = 100;
    private const string Modbus = "protocol = \"modbus-rtu\"";
    private const string Capacity = "capacity_kg = 600  # not known: what the pad may carry, by its plate; correct it";

    /// <summary>A [[pads]] block that the daemon takes as it is; nothing for what is not known.</summary>
    /// <param name="finding">The port.</param>
    /// <param name="found">What on it is meant.</param>
    /// <param name="corner">LF, RF, LR or RR.</param>
    /// <param name="isCornerKnown">Somebody has said so; otherwise the block says that it is only the next free one.</param>
    public static string? Of(PortFinding finding, Found found, string corner, bool isCornerKnown = true)
    {
        IEnumerable<string> own = found switch
        {
            FoundPadFrames { SerialNumber: { } serial } => [$"serial_number = {TomlText.Quoted(serial)}"],
            FoundText text => [.. Lines(text), Capacity],
            FoundSlave slave => [.. Bus(finding, slave), Capacity, .. RegisterBlock.Of(slave)],
            FoundTraffic traffic => [Modbus, $"slave = {Number(traffic.First.Slave)}", Capacity, .. RegisterBlock.Of(traffic.First)],
            _ => [],
        };
        return found.Protocol is null ? null : string.Join('\n', ["[[pads]]", .. found is FoundSlave read ? read.Tables.Select(t => TomlText.Comment($"Read: {t.Describe()}")) : [], .. found.Remarks.Select(TomlText.Comment), .. Link(finding, corner, isCornerKnown), .. own]);
    }

    internal static List<string> Link(PortFinding finding, string corner, bool isCornerKnown = true)
    {
        List<string> lines = [$"corner = {TomlText.Quoted(corner)}{(isCornerKnown ? "" : "  # not known: press on the pad and look which one moves")}", $"link = {TomlText.Quoted(finding.Link)}"];
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

    /// <summary>What the daemon has to know of lines of text.</summary>
    internal static IEnumerable<string> Lines(FoundText text) =>
    [
        "protocol = \"text-lines\"",
        TomlText.Comment($"Heard: {text.Lines[^1]}"),
        $"pattern = {TomlText.Literal(text.Pattern)}",
        .. text.Others.Values.Select(other => $"# with number {Number(other.Load)} for the load: pattern = {TomlText.Literal(other.Pattern)}{(other.Unit == text.Unit ? "" : $" and {Unit(other)}")}"),
        .. text.IsToBeAsked && text.TakingAll() is { } cells ? new[] { $"# if they are the cells of one pad: pattern = {TomlText.Literal(cells.Pattern)}" } : [],
        .. text.End is { } end ? new[] { $"line_end = {TomlText.Quoted(end.ToString())}" } : [],
        .. text.Unit is null ? [] : new[] { Unit(text) },
        .. text.HasXor ? new[] { "checksum = \"xor\"" } : [],
    ];

    /// <summary>What the daemon has to know of a slave, its registers aside.</summary>
    internal static IEnumerable<string> Bus(PortFinding finding, FoundSlave slave) =>
        [Modbus, $"slave = {Number(slave.Slave)}", .. PollBlock.Hz(finding) is { } poll ? new[] { poll } : [], .. Timeout(slave)];

    private static string Unit(FoundText text) => text.Unit is { } unit ? $"unit = {TomlText.Quoted(unit)}" : "no unit";

    // Twice what it took, where that is more than the daemon waits by itself.
    private static IEnumerable<string> Timeout(FoundSlave slave) =>
        Math.Ceiling(2 * slave.ReplyWithin.TotalMilliseconds / 10) * 10 is > UsualTimeoutMs and var ms ? [$"reply_timeout_ms = {Number((int)Math.Min(ms, 1000))}"] : [];

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
