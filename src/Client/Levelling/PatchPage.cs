using ScaleLink.Api.V1;
using ScaleLink.Client.InclinometerZeros;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.WorkSessions;
using static ScaleLink.Measure.Sentences.Arguments;

namespace ScaleLink.Client.Levelling;

/// <summary>The patch as lines.</summary>
internal static class PatchPage
{
    public static IEnumerable<string> Lines(PatchReport report, Glyphs glyphs)
    {
        if (report.Shape is { } shape)
        {
            yield return $"Height measurement{(report.MeasuredAt is { } at ? $" of {at.LocalMinute()} by {PeerText.Clean(report.Who, 40)}" : ", not saved")}{(report.Note.Length > 0 ? $": {PeerText.Clean(report.Note, 80)}" : "")}";
            yield return $"  LF {Height(shape.HeightsMm.Lf, glyphs),-14} RF {Height(shape.HeightsMm.Rf, glyphs),-14} {glyphs.LengthSign()} above the mean";
            yield return $"  LR {Height(shape.HeightsMm.Lr, glyphs),-14} RR {Height(shape.HeightsMm.Rr, glyphs),-14} {glyphs.LengthSign()}";
            yield return glyphs.Line($"  warp {Height(shape.WarpMm, glyphs)} {glyphs.LengthSign()}, nose up {shape.NoseUpDeg.Estimate:+0.00;-0.00;0.00}°, left up {shape.LeftUpDeg.Estimate:+0.00;-0.00;0.00}°, spread {Mm(shape.SpreadMm):0.0}");
            yield return shape.Spare == 0 ? "  nothing was measured twice" : glyphs.Line($"  closure {Mm(shape.ClosureMm):0.00}, {shape.Spare} spare measurements");
        }

        if (report.Effect is { } effect)
            yield return $"It moves cross weight by {effect.CrossWeightPercent:+0.00;-0.00;0.00} %, front weight by {effect.FrontWeightPercent:+0.00;-0.00;0.00} %, left-side weight by {effect.LeftSideWeightPercent:+0.00;-0.00;0.00} %.";
        foreach (var correction in report.Corrections)
            yield return $"{correction.Name,-6} {(correction.On ? "on " : "off")}  {Size(correction, glyphs)}";
        foreach (var tilt in report.PadTilts)
            yield return $"{tilt.Corner.Name()} tilts {(tilt is { HasPitchDeg: true, HasRollDeg: true } ? $"pitch {tilt.PitchDeg:+0.00;-0.00;0.00}°, roll {tilt.RollDeg:+0.00;-0.00;0.00}°" : "by an unknown angle")}; {InclinometerZeroPage.Zero(tilt.Zero, glyphs)}";
        foreach (var finding in report.Findings)
            yield return PlanPage.FindingLine(finding, glyphs);
        yield return PeerText.Clean(report.Limits, 300);
    }

    public static IEnumerable<string> Shims(ShimPlan plan, Glyphs glyphs)
    {
        foreach (var stack in plan.Stacks)
            yield return $"{stack.Corner.Name()}  {(stack.ThicknessesMm.Count == 0 ? "none" : string.Join(" + ", stack.ThicknessesMm.Select(t => glyphs.Line($"{BareMm(t):0.##}"))) + $" {glyphs.LengthSign()}")}";
        yield return glyphs.Line($"Then {Mm(plan.SpreadMm):0.00} between highest and lowest pad.");
        if (plan.EffectAfter is { } effect)
            yield return $"What remains moves cross weight by {effect.CrossWeightPercent:+0.00;-0.00;0.00} %.";
        if (plan.Finding is { } finding)
            yield return PlanPage.FindingLine(finding, glyphs);
        yield return "Measure the heights of the pads again after shimming.";
    }

    private static string Size(PatchCorrection correction, Glyphs glyphs) => correction switch
    {
        { Refused: { } refused } => $"refused. {PlanPage.FindingLine(refused, glyphs)}",
        { SizeKg: { } size } => $"{(correction.On ? "adds" : "would add")} LF {Signed(size.Lf, glyphs)}  RF {Signed(size.Rf, glyphs)}  LR {Signed(size.Lr, glyphs)}  RR {Signed(size.Rr, glyphs)} {glyphs.MassSign()}",
        _ => "nothing to go by",
    };

    private static string Height(MeasuredValue height, Glyphs glyphs) => Shown.Mm(height, glyphs, isSigned: true).Bare(glyphs);

    private static string Signed(MeasuredValue quantity, Glyphs glyphs) => Shown.Kg(quantity, glyphs, isSigned: true).Bare(glyphs);
}
