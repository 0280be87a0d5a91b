using ScaleLink.Api.V1;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;

namespace ScaleLink.Client.WorkSessions;

/// <summary>Sessions on record as lines.</summary>
internal static class RecordsPage
{
    public static IEnumerable<string> List(ListSessionsResponse list)
    {
        if (list.Sessions.Count == 0)
            yield return "No session is on record.";
        foreach (var s in list.Sessions)
        {
            var from = s.HasBaselineCrossWeightPercent ? $"{s.BaselineCrossWeightPercent:0.00} -> {s.LastCrossWeightPercent:0.00} %, {s.Adjustments} adjustments" : "no reading";
            yield return $"{PeerText.Clean(s.Id, 24),-16} {PeerText.Clean(s.Car, 16),-16} {SessionPage.StateWord(s.State).ToLowerInvariant(),-12} {from}  {PeerText.Clean(s.Title, 40)}".TrimEnd();
        }
    }

    public static IEnumerable<string> Cautions(Session? session, int width) => session is null ? ["No session is open in this bay."] :
        [.. session.SessionCautions.SelectMany(c => TextWrap.Lines(PeerText.Clean(c, 400), width, 20).Append("")),
            session.CautionsRead.Count == 0 ? "Nobody has said yet that they read this: scalelink work-session cautions-read." : $"Read by {string.Join(", ", session.CautionsRead.Select(c => PeerText.Clean(c.Who, 40)))}."];

    public static IEnumerable<string> Show(Session s, Glyphs glyphs)
    {
        yield return $"{PeerText.Clean(s.Car, 40)}, session {PeerText.Clean(s.Id, 24)}, bay {PeerText.Clean(s.Bay, 32)}, begun {s.StartedAt.LocalMinute()} by {PeerText.Clean(s.Who, 40)}";
        if (s.Title.Length > 0)
            yield return PeerText.Clean(s.Title, 80);
        yield return s.Ending.Length > 0 ? PeerText.Clean(s.Ending, 300) : $"Now: {PeerText.Clean(s.Next, 300)}";
        foreach (var weighing in s.Weighings)
        {
            var what = weighing.Adjustment is { } a ? PeerText.Clean(a.Words, 100) : weighing.Number == 0 ? "baseline" : weighing.Counts ? "settled again" : "does not count";
            var predicted = weighing.Adjustment?.Predicted is { } p ? $", predicted {Shown.Percent(p.CrossWeightPercent).Bare(glyphs)}" : "";
            yield return $"{weighing.Number,3}  {Shown.Percent(weighing.Loads.CrossWeightPercent).Full(glyphs)}{predicted}  {what}";
            if (PatchWords.Of(weighing, glyphs) is { Length: > 0 } patch)
                yield return $"     {patch}";
            foreach (var finding in weighing.Findings)
                yield return $"     {PlanPage.FindingLine(finding, glyphs)}";
        }

        foreach (var check in s.Preparation.Concat(s.LastSteps))
            yield return $"[{(check.Done ? "x" : check.Skipped ? "-" : " ")}] {PeerText.Clean(check.Title, 50)}{(check.Value.Length > 0 ? $": {glyphs.Tell(check.ValueSaid, 80)}" : "")}{(check.Note.Length > 0 ? $" ({PeerText.Clean(check.Note, 100)})" : "")}";
        if (s.BackToBaselineWords.Length > 0)
            yield return $"Back to the baseline: {PeerText.Clean(s.BackToBaselineWords, 100)}";
    }

    public static IEnumerable<string> Compare(SessionComparison c, Glyphs glyphs)
    {
        yield return $"{"",-34} {PeerText.Clean(c.First.Id, 20),-20} {PeerText.Clean(c.Second.Id, 20),-20} difference";
        foreach (var figure in c.Figures)
            yield return $"{PeerText.Clean(figure.Name, 33),-34} {Show(figure.First, glyphs),-20} {Show(figure.Second, glyphs),-20} {Show(figure.Difference, glyphs)}".TrimEnd();
        foreach (var finding in c.Findings)
            yield return PlanPage.FindingLine(finding, glyphs);
    }

    private static string Show(MeasuredValue? quantity, Glyphs glyphs) => quantity is null ? "-" : Shown.Percent(quantity).Bare(glyphs);
}
