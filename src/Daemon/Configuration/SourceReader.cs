using System.IO.Ports;
using ScaleLink.Daemon.Ports;
using ScaleLink.Protocol.Modbus;
using ScaleLink.Protocol.Readings;
using ScaleLink.Protocol.TextLines;

namespace ScaleLink.Daemon.Configuration;

/// <summary>Reads where numbers come from, out of a [[pads]] or a [pads.tilt] block.</summary>
internal sealed class SourceReader(TomlBlock block, IReadOnlyList<TomlBlock> registers)
{
    private const string AnyEnd = "return-or-feed";
    private const string NoEnd = "pause";

    private static readonly Dictionary<string, ProtocolKind> ProtocolNames = new()
    {
        ["pad-frames"] = ProtocolKind.PadFrames,
        ["modbus-rtu"] = ProtocolKind.ModbusRtu,
        ["text-lines"] = ProtocolKind.TextLines,
    };

    private static readonly Dictionary<string, Parity> ParityNames = new() { ["none"] = Parity.None, ["even"] = Parity.Even, ["odd"] = Parity.Odd };

    private static readonly Dictionary<string, PortReader> ReaderNames = new() { ["system"] = PortReader.System, ["library"] = PortReader.Library };

    private static readonly Dictionary<string, LineChecksum> ChecksumNames = new() { ["none"] = LineChecksum.None, ["xor"] = LineChecksum.Xor };

    private static readonly Dictionary<string, FieldUnit> LoadUnits =
        Enum.GetValues<FieldUnit>().Where(u => FieldUnits.Fits(FieldMeaning.Load, u)).ToDictionary(RegisterReader.NameOf);

    private static readonly string[] ModbusKeys = ["slave", "poll_hz", "reply_timeout_ms"];
    private static readonly string[] TextKeys = ["pattern", "line_end", "pause_ms", "checksum", "unit", "scale"];

    /// <summary>Every key is read whatever the protocol, so that each mistake is told; the ones of another protocol are mistakes of their own.</summary>
    public SourceConfiguration Read()
    {
        var protocol = block.Choice("protocol", ProtocolNames) ?? ProtocolKind.PadFrames;
        var source = new SourceConfiguration
        {
            Link = block.RequiredText("link"),
            Baud = block.Whole("baud", 1, 4_000_000) ?? 115_200,
            Parity = block.Choice("parity", ParityNames) ?? Parity.None,
            DataBits = ReadDataBits(protocol),
            StopBits = block.Whole("stop_bits", 1, 2) ?? 1,
            ReadBy = block.Choice("read_by", ReaderNames) ?? PortReader.System,
            ReopenAfter = TimeSpan.FromSeconds(block.Number("reopen_after_seconds", 1, 3600) ?? (protocol == ProtocolKind.TextLines ? 10 : 5)),
            Protocol = protocol,
            Modbus = ReadModbus(protocol == ProtocolKind.ModbusRtu),
            Text = ReadText(protocol == ProtocolKind.TextLines),
            Line = block.LineOf("link"),
        };
        if (protocol != ProtocolKind.ModbusRtu)
            Refuse(ModbusKeys, protocol);
        if (protocol != ProtocolKind.TextLines)
            Refuse(TextKeys, protocol);
        foreach (var table in protocol == ProtocolKind.ModbusRtu ? [] : registers)
            table.Note(ConfigurationCodes.KeyMeansNothing, table.Line, $"[[{table.Name}]] means nothing to {NameOf(protocol)}.", "Write protocol = \"modbus-rtu\", or take it out.");
        return source;
    }

    private int ReadDataBits(ProtocolKind protocol)
    {
        var bits = block.Whole("data_bits", 7, 8) ?? 8;
        if (bits == 7 && protocol != ProtocolKind.TextLines)
            block.Note(ConfigurationCodes.ValueUnusable, block.LineOf("data_bits"), $"{block.Name}.data_bits = 7 loses the eighth bit of every byte of {NameOf(protocol)}.", "Take it out: only text-lines can be sent with 7.");
        return bits;
    }

    private ModbusConfiguration? ReadModbus(bool isMeant)
    {
        var slave = block.Whole("slave", ModbusRequest.LowestSlave, ModbusRequest.HighestSlave);
        var pollHz = block.Number("poll_hz", 4, 200) ?? 20;
        var timeoutMs = block.Number("reply_timeout_ms", 10, 1000) ?? 100;
        var fields = registers.Select(RegisterReader.Read).ToList();
        if (!isMeant)
            return null;
        if (!block.Has("slave"))
            block.Note(ConfigurationCodes.KeyMissing, block.Line, $"{block.Name}.slave is missing.", "Add slave = 1, or the address that is set in the device.");
        if (fields.Contains(null))
            return null;
        var problems = RegisterMap.Problems([.. fields.OfType<RegisterField>()]).ToList();
        foreach (var problem in problems)
            block.Note(ConfigurationCodes.ReadingsUnusable, block.Line, $"{block.Name}: {problem}.", $"Correct the [[{block.Name}.registers]] blocks.");
        return problems.Count > 0 || slave is not { } address
            ? null
            : new ModbusConfiguration((byte)address, pollHz, TimeSpan.FromMilliseconds(timeoutMs), new RegisterMap([.. fields.OfType<RegisterField>()]));
    }

    private TextConfiguration? ReadText(bool isMeant)
    {
        var pattern = block.AnyText("pattern");
        var pauseMs = block.Number("pause_ms", 2, 1000);
        var checksum = block.Choice("checksum", ChecksumNames) ?? LineChecksum.None;
        var unit = block.Choice("unit", LoadUnits) ?? FieldUnit.Count;
        var scale = block.Number("scale", -1e9, 1e9) ?? 1;
        var end = ReadEnd(pauseMs is not null);
        if (!isMeant)
            return null;
        if (pattern is null)
        {
            if (!block.Has("pattern"))
                block.Note(ConfigurationCodes.KeyMissing, block.Line, $"{block.Name}.pattern is missing.", "Add pattern = '...' with a group for each number.");
            return null;
        }

        if (!LinePattern.TryCreate(pattern, unit, scale, checksum, out var made, out var problem))
            block.Note(ConfigurationCodes.PatternUnusable, block.LineOf("pattern"), $"{block.Name}.pattern cannot be used: {problem}.", "Write a .NET regular expression without look-around, in 'single quotes', with named groups.");
        return made is null ? null : new TextConfiguration(made, end, pauseMs is { } ms ? TimeSpan.FromMilliseconds(ms) : null);
    }

    private LineEnd ReadEnd(bool hasPause)
    {
        var text = block.AnyText("line_end") ?? AnyEnd;
        if (text == NoEnd && !hasPause)
            block.Note(ConfigurationCodes.ValueUnusable, block.LineOf("line_end"), $"{block.Name}.line_end = \"{NoEnd}\" needs pause_ms.", "Add pause_ms, for instance 20.");
        if (text is [< (char)128 and var one])
            return LineEnd.Only((byte)one);
        if (text is not (AnyEnd or NoEnd))
            block.Note(ConfigurationCodes.ValueUnusable, block.LineOf("line_end"), $"{block.Name}.line_end = \"{text}\" ends no line.", $"Write \"{AnyEnd}\", \"{NoEnd}\", or one character such as \";\" or \"\\u0003\".");
        return text == NoEnd ? LineEnd.PauseOnly : LineEnd.ReturnOrFeed;
    }

    private void Refuse(IEnumerable<string> keys, ProtocolKind protocol)
    {
        foreach (var key in keys.Where(block.Has))
            block.Note(ConfigurationCodes.KeyMeansNothing, block.LineOf(key), $"{block.Name}.{key} means nothing to {NameOf(protocol)}.", "Take it out, or correct protocol.");
    }

    public static string NameOf(ProtocolKind protocol) => ProtocolNames.First(p => p.Value == protocol).Key;
}
