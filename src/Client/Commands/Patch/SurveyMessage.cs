using ScaleLink.Api.V1;
using ScaleLink.Measure;
using ScaleLink.Weighing.Patch.Files;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Client.Commands;

/// <summary>A survey file in the words of the API.</summary>
internal static class SurveyMessage
{
    public static Survey Of(SurveyInput input)
    {
        var survey = new Survey { Note = input.Note };
        if (input.HeightsMm is { } heights)
            survey.Heights.AddRange(Corners.All.ToArray().Select(c => new PadHeight { Corner = c.ToWire(), Mm = heights[c], StandardUncertaintyMm = input.HeightUncertaintiesMm[c] }));
        survey.Differences.AddRange(input.Differences.Select(d => new PadDifference { From = d.From.ToWire(), To = d.To.ToWire(), Mm = d.Mm, StandardUncertaintyMm = d.StandardUncertaintyMm }));
        survey.Beams.AddRange(input.Beams.Select(b => new Wire.BeamReading
        {
            From = b.From.ToWire(), To = b.To.ToWire(), SpanMm = b.SpanMm, ReadingDeg = b.ReadingDeg, ReversedDeg = b.ReversedDeg, ReadingUncertaintyDeg = b.ReadingUncertaintyDeg,
        }));
        return survey;
    }
}
