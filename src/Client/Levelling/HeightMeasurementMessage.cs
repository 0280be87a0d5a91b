using ScaleLink.Api.V1;
using ScaleLink.Measure;
using ScaleLink.Weighing.Levelling.Files;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Client.Levelling;

/// <summary>A height measurement file in the words of the API.</summary>
internal static class HeightMeasurementMessage
{
    public static HeightMeasurement Of(HeightMeasurementInput input)
    {
        var heightMeasurement = new HeightMeasurement { Note = input.Note };
        if (input.HeightsMm is { } heights)
            heightMeasurement.Heights.AddRange(Corners.All.ToArray().Select(c => new PadHeight { Corner = c.ToWire(), Mm = heights[c], StandardUncertaintyMm = input.HeightUncertaintiesMm[c] }));
        heightMeasurement.Differences.AddRange(input.Differences.Select(d => new PadDifference { From = d.From.ToWire(), To = d.To.ToWire(), Mm = d.Mm, StandardUncertaintyMm = d.StandardUncertaintyMm }));
        heightMeasurement.Beams.AddRange(input.Beams.Select(b => new Wire.BeamReading
        {
            From = b.From.ToWire(), To = b.To.ToWire(), SpanMm = b.SpanMm, ReadingDeg = b.ReadingDeg, ReversedDeg = b.ReversedDeg, ReadingUncertaintyDeg = b.ReadingUncertaintyDeg,
        }));
        return heightMeasurement;
    }
}
