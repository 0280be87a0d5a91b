using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using static ScaleLink.Measure.Sentences.Arguments;

namespace ScaleLink.Client.WorkSessions;

/// <summary>A plan as lines.</summary>
internal static class PlanPage
{
    private const int Longest = 300;

    public static IEnumerable<string> Lines(PerchPlan plan, Glyphs glyphs)
    {
        yield return plan switch
        {
            { Turns: null } => "There is no plan.",
            { AlreadyThere: true } => "Within tolerance: nothing to turn. Settle again to be sure, or plan with --refine.",
            _ => $"Turn {glyphs.Say(PeerText.Clean(plan.Words, 120))}: then settle.",
        };
        if (plan is { AlreadyThere: false, Turns: not null, Predicted: { } predicted })
        {
            foreach (var line in Prediction(predicted, glyphs))
                yield return line;
            if (!plan.Reaches)
                yield return "These turns do not reach the target.";
        }

        foreach (var alternative in plan.Ways)
            yield return $"Or: {glyphs.Tell(alternative, Longest)}";
        foreach (var finding in plan.Findings)
            yield return FindingLine(finding, glyphs);
        if (plan is { AlreadyThere: false })
            yield return $"Caution: {PeerText.Clean(plan.Caution, Longest)}";
    }

    /// <summary>What some turns should do.</summary>
    public static IEnumerable<string> Prediction(Prediction predicted, Glyphs glyphs)
    {
        yield return $"Expected on the next reading: cross weight {Shown.Percent(predicted.CrossWeightPercent).Full(glyphs)}";
        var (loads, heights) = (predicted.Loads.LoadsKg, predicted.HeightChangesMm);
        yield return $"  LF {Kg(loads.Lf, glyphs),-14} RF {Kg(loads.Rf, glyphs),-14} {glyphs.MassSign()}     heights {Height(heights.Lf, glyphs)}  {Height(heights.Rf, glyphs)} {glyphs.LengthSign()}";
        yield return $"  LR {Kg(loads.Lr, glyphs),-14} RR {Kg(loads.Rr, glyphs),-14} {glyphs.MassSign()}             {Height(heights.Lr, glyphs)}  {Height(heights.Rr, glyphs)} {glyphs.LengthSign()}";
    }

    /// <summary>A finding in one line.</summary>
    public static string FindingLine(Api.V1.Diagnostic finding, Glyphs glyphs) =>
        glyphs.Tell(DiagnosticReader.Read(finding));

    private static string Height(MeasuredValue mm, Glyphs glyphs) => glyphs.Line($"{BareMm(mm.Estimate):+0.0}");

    private static string Kg(MeasuredValue quantity, Glyphs glyphs) => Shown.Kg(quantity, glyphs).Bare(glyphs);
}
