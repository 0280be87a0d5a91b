using ScaleLink.Protocol.Readings;
using ScaleLink.Measure;

namespace ScaleLink.Daemon.Configuration;

/// <summary>Reads one [[pads]] block and the blocks below it.</summary>
internal static class PadReader
{
    private static readonly Dictionary<string, Corner> CornerNames = Enum.GetValues<Corner>().ToDictionary(c => c.ToString());

    public static PadConfiguration Read(TomlBlock block, TomlTables tables)
    {
        var corner = block.Choice("corner", CornerNames);
        if (!block.Has("corner"))
            block.Note(ConfigurationCodes.KeyMissing, block.Line, "pads.corner is missing.", "Add corner = \"LF\", \"RF\", \"LR\" or \"RR\".");
        var source = new SourceReader(block, tables.Under(block, "pads.registers", isList: true)).Read();
        var pad = new PadConfiguration
        {
            // A pad without a readable corner is already a mistake; the value is never used.
            Corner = corner ?? (Corner)(-1),
            Source = source,
            Tilt = ReadTilt(block, tables),
            SerialNumber = block.Text("serial_number"),
            CapacityKg = block.Number("capacity_kg", 1, 100_000),
            KgPerCount = block.Number("kg_per_count", -10, 10) ?? MassStep(source),
            SpanUncertaintyPercent = block.Number("span_uncertainty_percent", 0.001, 50) ?? 1,
            CorrectTilt = block.Flag("correct_tilt") ?? true,
            Line = block.LineOf("link"),
        };
        if (pad.KgPerCount is 0)
            block.Note(ConfigurationCodes.ValueUnusable, block.LineOf("kg_per_count"), "pads.kg_per_count = 0 gives no load.", "Write the kg that one count stands for.");
        CheckCapacity(block, source.Protocol);
        CheckLoads(block, source);
        block.Finish();
        return pad;
    }

    private static SourceConfiguration? ReadTilt(TomlBlock pad, TomlTables tables)
    {
        var blocks = tables.Under(pad, "pads.tilt", isList: false);
        var registers = tables.Under(pad, "pads.tilt.registers", isList: true);
        if (blocks.Count == 0)
        {
            foreach (var stray in registers)
                stray.Note(ConfigurationCodes.BlockMisplaced, stray.Line, "[[pads.tilt.registers]] stands without its [pads.tilt].", "Add [pads.tilt] above it.");
            return null;
        }

        var source = new SourceReader(blocks[0], registers).Read();
        var rules = RulesOf(source);
        if (rules is not null && !(rules.Contains(FieldMeaning.Pitch) && rules.Contains(FieldMeaning.Roll)))
            blocks[0].Note(ConfigurationCodes.ReadingsUnusable, blocks[0].Line, "pads.tilt gives no pitch and roll.", "Name both.");
        if (rules?.Contains(FieldMeaning.Load) == true)
            blocks[0].Note(ConfigurationCodes.ReadingsUnusable, blocks[0].Line, "pads.tilt names a load.", "Loads belong to the pad's own source.");
        blocks[0].Finish();
        return source;
    }

    private static void CheckCapacity(TomlBlock block, ProtocolKind protocol)
    {
        if (protocol == ProtocolKind.PadFrames && block.Has("capacity_kg"))
            block.Note(ConfigurationCodes.KeyMeansNothing, block.LineOf("capacity_kg"), "pads.capacity_kg means nothing to pad-frames: the pad says it itself.", "Take it out.");
        else if (protocol != ProtocolKind.PadFrames && !block.Has("capacity_kg"))
            block.Note(ConfigurationCodes.KeyMissing, block.Line, "pads.capacity_kg is missing.", "Add capacity_kg = what the pad may carry: a zero is held against it.");
    }

    private static void CheckLoads(TomlBlock block, SourceConfiguration source)
    {
        if (RulesOf(source)?.Contains(FieldMeaning.Load) == false)
            block.Note(ConfigurationCodes.ReadingsUnusable, block.Line, "pads: no load is named.", "Name a load for each cell.");
    }

    private static HashSet<FieldMeaning>? RulesOf(SourceConfiguration source) =>
        (source.Modbus?.Map.Fields.Select(f => f.Rule) ?? source.Text?.Pattern.Rules)?.Select(r => r.Meaning).ToHashSet();

    // A device that gives a mass needs no calibration to start with.
    private static double? MassStep(SourceConfiguration source)
    {
        var rules = source.Modbus?.Map.Fields.Select(f => f.Rule) ?? source.Text?.Pattern.Rules ?? [];
        return rules.Any(r => r.Meaning == FieldMeaning.Load && FieldUnits.IsMass(r.Unit)) ? FieldUnits.MassStepKg : null;
    }
}
