using ScaleLink.Api.V1;
using ScaleLink.Weighing;
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
            survey.Heights.AddRange(Corners.All.ToArray().Select(c => new PadHeight { Corner = Of(c), Mm = heights[c], StandardUncertaintyMm = input.HeightUncertaintiesMm[c] }));
        survey.Differences.AddRange(input.Differences.Select(d => new PadDifference { From = Of(d.From), To = Of(d.To), Mm = d.Mm, StandardUncertaintyMm = d.StandardUncertaintyMm }));
        survey.Beams.AddRange(input.Beams.Select(b => new Wire.BeamReading
        {
            From = Of(b.From), To = Of(b.To), SpanMm = b.SpanMm, ReadingDeg = b.ReadingDeg, ReversedDeg = b.ReversedDeg, ReadingUncertaintyDeg = b.ReadingUncertaintyDeg,
        }));
        return survey;
    }

    private static Wire.Corner Of(Weighing.Corner corner) => corner switch
    {
        Weighing.Corner.LF => Wire.Corner.Lf,
        Weighing.Corner.RF => Wire.Corner.Rf,
        Weighing.Corner.LR => Wire.Corner.Lr,
        _ => Wire.Corner.Rr,
    };
}
