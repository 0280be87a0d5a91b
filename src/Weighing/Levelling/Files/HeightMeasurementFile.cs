using ScaleLink.Weighing.Documents;

namespace ScaleLink.Weighing.Levelling.Files;

/// <summary>A height measurement of the patch as a JSON document. Fields: docs/patch.md.</summary>
/// <param name="HeightMeasurement">Null when the document cannot be used.</param>
/// <param name="Mistakes">All of them, each with place and line.</param>
sealed record HeightMeasurementFile(HeightMeasurementInput? HeightMeasurement, IReadOnlyList<Diagnostic> Mistakes)
{
    /// <summary>Reads a document. Never throws for what is in it.</summary>
    public static HeightMeasurementFile Read(string text)
    {
        var notes = new DocumentNotes(text);
        if (JsonBlock.Open(text, notes) is not { } root)
            return new(null, notes.Found);
        var (heights, u) = Heights(root.Block("heights_mm"));
        var heightMeasurement = new HeightMeasurementInput
        {
            Note = root.Text("note") ?? "",
            HeightsMm = heights,
            HeightUncertaintiesMm = Corners.Same(u),
            Differences = [.. root.List("differences").Select(Difference).OfType<HeightDifference>()],
            Beams = [.. root.List("beams").Select(Beam).OfType<BeamReading>()],
        };
        root.Finish();
        if (!root.Has("heights_mm") && !root.Has("differences") && !root.Has("beams"))
            root.Missing("differences", "[ { \"from\": \"LF\", \"to\": \"RF\", \"mm\": 1.2, \"u_mm\": 0.2 }, ... ]");
        return new(notes.Found.Count == 0 ? heightMeasurement : null, notes.Found);
    }

    static (Corners? Heights, double U) Heights(JsonBlock? block)
    {
        if (block is null)
            return default;
        var four = Corners.All.ToArray().Select(c => Needed(block, $"{c}")).ToArray();
        var u = Needed(block, "u_mm");
        block.Finish();
        return four is [{ } lf, { } rf, { } lr, { } rr] && u is { } one ? (new Corners(lf, rf, lr, rr), one) : default;
    }

    static HeightDifference? Difference(JsonBlock block)
    {
        var (from, to, mm, u) = (Pad(block, "from"), Pad(block, "to"), Needed(block, "mm"), Needed(block, "u_mm"));
        block.Finish();
        return from is { } f && to is { } t && mm is { } m && u is { } s ? new(f, t, m, s) : null;
    }

    static BeamReading? Beam(JsonBlock block)
    {
        var (from, to, span) = (Pad(block, "from"), Pad(block, "to"), Needed(block, "span_mm"));
        var (reading, reversed, u) = (Needed(block, "reading_deg"), Needed(block, "reversed_deg"), Needed(block, "u_deg"));
        block.Finish();
        return from is { } f && to is { } t && span is { } mm && reading is { } r && reversed is { } v && u is { } s ? new(f, t, mm, r, v, s) : null;
    }

    static Corner? Pad(JsonBlock block, string key)
    {
        if (!block.Has(key))
            block.Missing(key, "\"LF\"");
        return block.Corner(key);
    }

    static double? Needed(JsonBlock block, string key)
    {
        if (!block.Has(key))
            block.Missing(key, "0.2");
        return block.Number(key);
    }
}
