using ScaleLink.Api.V1;
using ScaleLink.Board.Readings;

namespace ScaleLink.Board.Levelling;

/// <summary>A height measurement of the pads as the form has it: four heights over one datum, or differences between pads.</summary>
public sealed class HeightMeasurementForm
{
    /// <summary>Six pairs, each measured twice.</summary>
    public const int MostRows = 12;
    private const int FewestRows = 3;

    private readonly string[] _heights = ["", "", "", "", ""];

    /// <summary>Whether differences were measured, not heights.</summary>
    public bool ByDifferences { get; set; }

    /// <summary>One standard uncertainty of a height, or of a difference, in the unit of lengths.</summary>
    public string Uncertainty { get; set; } = "";

    /// <summary>One standard uncertainty of a single reading on the beam, degrees.</summary>
    public string BeamUncertainty { get; set; } = "";

    /// <summary>What it was measured with.</summary>
    public string Note { get; set; } = "";

    /// <summary>Round the patch: four differences close on themselves and check each other.</summary>
    public List<HeightMeasurementRow> Rows { get; } = [new(Corner.Lf, Corner.Rf), new(Corner.Rf, Corner.Rr), new(Corner.Rr, Corner.Lr), new(Corner.Lr, Corner.Lf)];

    /// <summary>Whether a row is for a beam.</summary>
    public bool HasBeam => Rows.Any(r => r.IsBeam);

    /// <summary>Whether a row is for a difference that is read off directly.</summary>
    public bool HasDirect => Rows.Any(r => !r.IsBeam);

    /// <summary>The first thing that is needed still; empty when the height measurement can be asked about.</summary>
    public string Lacking => ByDifferences ? LackingDifference : LackingHeight;

    private IEnumerable<HeightMeasurementRow> Measured => Rows.Where(r => !r.IsEmpty);

    /// <summary>Height of a pad as typed, in the unit of lengths.</summary>
    public string Height(Corner corner) => _heights[(int)corner];

    /// <summary>Takes the height of a pad as typed.</summary>
    public void SetHeight(Corner corner, string? text) => _heights[(int)corner] = text ?? "";

    /// <summary>The beam stays the same from pair to pair: without a span of its own a row takes that of the beam above it.</summary>
    public string Span(HeightMeasurementRow row) => Rows.Take(Rows.IndexOf(row) + 1).LastOrDefault(r => r.IsBeam && r.Span.Trim().Length > 0)?.Span ?? "";

    /// <summary>What the daemon is given; only when nothing is lacking.</summary>
    public HeightMeasurement HeightMeasurement(Unit length)
    {
        ArgumentNullException.ThrowIfNull(length);
        var heightMeasurement = new HeightMeasurement { Note = Note.Trim() };
        if (!ByDifferences)
        {
            heightMeasurement.Heights.AddRange(WireCorners.All.Select(c => new PadHeight { Corner = c, Mm = Mm(Height(c), length), StandardUncertaintyMm = Mm(Uncertainty, length) }));
            return heightMeasurement;
        }

        heightMeasurement.Differences.AddRange(Measured.Where(r => !r.IsBeam).Select(r => new PadDifference { From = r.From, To = r.To, Mm = Mm(r.Difference, length), StandardUncertaintyMm = Mm(Uncertainty, length) }));
        heightMeasurement.Beams.AddRange(Measured.Where(r => r.IsBeam).Select(r => new BeamReading
        {
            From = r.From, To = r.To, SpanMm = Mm(Span(r), length),
            ReadingDeg = Number(r.Reading), ReversedDeg = Number(r.Reversed), ReadingUncertaintyDeg = Number(BeamUncertainty),
        }));
        return heightMeasurement;
    }

    private string LackingHeight => WireCorners.All.Where(c => Entry.Number(Height(c)) is null).Select(c => $"the height of {c.Name()}, a number").FirstOrDefault()
        ?? (Entry.Number(Uncertainty) is > 0 ? "" : "the standard uncertainty of a height, above zero");

    private string LackingDifference => Measured.Where(r => r.Lacking(Span(r)).Length > 0).Select(r => $"{r.Name}: the {r.Lacking(Span(r))}, a number").FirstOrDefault()
        ?? (Measured.Count() < FewestRows ? "three differences or more that connect all four pads"
            : Measured.Any(r => !r.IsBeam) && Entry.Number(Uncertainty) is not > 0 ? "the standard uncertainty of a difference, above zero"
            : Measured.Any(r => r.IsBeam) && Entry.Number(BeamUncertainty) is not > 0 ? "the standard uncertainty of a reading on the beam, above zero"
            : "");

    private static double Mm(string text, Unit length) => Number(text) * length.Factor;

    private static double Number(string text) => Entry.Number(text)!.Value;
}
