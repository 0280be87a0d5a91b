using System.Globalization;
using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;
using Aim = ScaleLink.Measure.Aim;

namespace ScaleLink.Client.WorkSessions;

/// <summary>A work session on a screen: what to do now first, then where the car stands, the trace, and what is open.</summary>
internal static class SessionPage
{
    private const int LeastWidth = 60;
    private const int TraceHeight = 8;
    private const int TraceWidth = 40;
    private const int LongestName = 40;
    // All that a preparation has: a crew takes what it sees for all there is.
    private const int MostChecks = 9;

    public static IReadOnlyList<string> Lines(Judged<GetSessionResponse> view, Shell shell, (int Width, int Height) size)
    {
        if (view.Message is not { } message)
            return [view.Trouble is { } trouble ? shell.Glyphs.Tell(trouble) : "Waiting for the daemon."];
        // A session that cannot be asked for any more is shown as it was, and said to be old.
        return view.Freshness == Freshness.Live
            ? Lines(message.Session, shell, size)
            : [$"HELD: {(view.Age is { } age ? $"{Words.Age(age)} old" : "age not known")}. {(view.Trouble is { } lost ? shell.Glyphs.Tell(lost) : "")}", .. Lines(message.Session, shell, (size.Width, size.Height - 1))];
    }

    public static IReadOnlyList<string> Lines(Session? session, Shell shell, (int Width, int Height) size)
    {
        if (session is null)
            return ["No session is open in this bay. Choose a car (scalelink car use FILE), then: scalelink work-session start"];
        var width = Math.Max(LeastWidth, Math.Min(size.Width, 120));
        var page = new Page(width);
        page.Add($"{PeerText.Clean(session.Car, LongestName)}  session {PeerText.Clean(session.Id, 24)}  bay {PeerText.Clean(session.Bay, 32)}  {StateWord(session.State)}", Ink.Strong);
        page.Add($"Target {AimWords.Target(session.TargetCrossWeightPercent, session.TargetTolerancePercent, shell.Glyphs)}, cross weight = (RF + LR) / total", Ink.Faint);
        if (session.Standing is { } standing)
            page.Add(Standing(standing, shell.Glyphs), InkOf(standing.Aim));
        page.Wrap($"Now: {shell.Glyphs.Say(PeerText.Clean(session.Next, 300))}", 2, Ink.Strong);
        if (Turned(session) is { Length: > 0 } turned)
            page.Wrap($"Was turned since the last weighing: {shell.Glyphs.Say(turned)}", 2);
        page.Wrap($"Caution: {PeerText.Clean(session.CautionLine, 300)}{(session.CautionsRead.Count == 0 ? " In full: scalelink work-session cautions." : "")}", 3, Ink.Faint);
        page.Add("");
        if (session.Trace.Count > 0)
            page.Draw(TraceHeight, (canvas, row) => Middle(canvas, row, session, shell.Glyphs));
        foreach (var check in OpenChecks(session).Take(MostChecks))
            page.Add($"[ ] {PeerText.Clean(check.Key, 24),-22} {PeerText.Clean(check.Title, 60)}");
        foreach (var finding in session.Findings.Concat(session.Plan?.Findings ?? []).Concat(Advice(session)).Take(4))
            page.Wrap(PlanPage.FindingLine(finding, shell.Glyphs), 2, Ink.Uncertain);
        if (session.State is SessionState.Planning or SessionState.Finishing && session.BackToBaselineWords is { Length: > 0 } back)
            page.Add($"Back to the baseline: {shell.Glyphs.Say(PeerText.Clean(back, 100))}", Ink.Faint);
        return page.ToLines(shell, size.Height);
    }

    /// <summary>The answer to a step, for a terminal that scrolls.</summary>
    public static IEnumerable<string> Short(Session session, Glyphs glyphs)
    {
        if (session.Ending.Length > 0)
        {
            yield return $"Session {PeerText.Clean(session.Id, 24)} {PeerText.Clean(session.Ending, 300)}";
            yield return $"Sheet for printing: scalelink work-session export {PeerText.Clean(session.Id, 24)}";
            yield break;
        }

        if (session is { Weighings: [.., var newest], OpenAdjustments.Count: 0 })
            yield return $"Weighing {newest.Number}: cross weight {Shown.Percent(newest.Loads.CrossWeightPercent).Full(glyphs)}";
        if (session.Standing is { } standing)
            yield return Standing(standing, glyphs);
        foreach (var line in session.OpenPrediction is { } predicted ? PlanPage.Prediction(predicted, glyphs) : [])
            yield return line;
        foreach (var finding in session.Findings.Concat(Advice(session)))
            yield return PlanPage.FindingLine(finding, glyphs);
        foreach (var cause in session.Weighings is [.., { Answered: false } last] ? last.Causes.Take(3) : [])
            yield return $"  {(cause.Explains ? "explains it" : "look at")}: {glyphs.Tell(cause.Said, 200)}{PutRight(session, cause)}";
        yield return $"Now: {glyphs.Say(PeerText.Clean(session.Next, 300))}";
    }

    // What the crew would have to type if that is it.
    private static string PutRight(Session session, LikelyCause cause) => cause.Turns is not { } turns ? ""
        : string.Create(CultureInfo.InvariantCulture, $" If so: scalelink work-session correct {session.Weighings[^1].Number}{string.Concat(WireCorners.All.Where(c => turns.At(c) != 0).Select(c => FormattableString.Invariant($" {c.Name()} {turns.At(c):0.###}")))}");

    public static string Standing(Standing standing, Glyphs glyphs)
    {
        var sign = standing.Verdict switch
        {
            AimVerdict.OnTarget => glyphs.Settled,
            AimVerdict.High => glyphs.High,
            AimVerdict.Low => glyphs.Low,
            _ => glyphs.Predicted,
        };
        var words = PeerText.Clean(standing.Words, 120);
        return $"{sign} {glyphs.Say(words)}";
    }

    public static string StateWord(SessionState state) => state switch
    {
        SessionState.Preparing => "PREPARATION",
        SessionState.Baseline => "BASELINE",
        SessionState.Planning => "TURN",
        SessionState.Settling => "SETTLE AND WEIGH",
        SessionState.Naming => "NAME THE CHANGE",
        SessionState.Finishing => "LAST STEPS",
        SessionState.Finished => "FINISHED",
        SessionState.Abandoned => "ABANDONED",
        _ => "",
    };

    // As something done, never as something to do.
    private static string Turned(Session session) => string.Join(", ", session.Perches.Where(p => p.Done != 0)
        .Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.Corner.Name()} {Math.Abs(p.Done):0.###} {(p.Done > 0 ? "up" : "down")}")));

    // What an open check needs is told by its name; what is told of one that is seen to is an advice that nobody would see otherwise.
    private static IEnumerable<Api.V1.Diagnostic> Advice(Session session) =>
        session.State == SessionState.Preparing ? session.Preparation.Where(c => c.Done).SelectMany(c => c.Findings) : [];

    private static IEnumerable<Check> OpenChecks(Session session) => (session.State switch
    {
        SessionState.Preparing => session.Preparation,
        SessionState.Finishing => session.LastSteps,
        _ => [],
    }).Where(c => !c.Done && !c.Skipped);

    private static void Middle(Canvas canvas, int row, Session session, Glyphs glyphs)
    {
        SessionTracePicture.Draw(canvas, (0, row), (Math.Min(TraceWidth, canvas.Width - 30), TraceHeight), session, glyphs);
        var column = Math.Min(TraceWidth, canvas.Width - 30) + 2;
        if (session.Weighings is not [.., var newest])
            return;
        var loads = newest.Loads.LoadsKg;
        canvas.Put(column, row, $"weighing {newest.Number}, {glyphs.MassSign()}", Ink.Faint);
        canvas.Put(column, row + 1, $"LF {Shown.Kg(loads.Lf, glyphs).Estimate,7}   RF {Shown.Kg(loads.Rf, glyphs).Estimate,7}");
        canvas.Put(column, row + 2, $"LR {Shown.Kg(loads.Lr, glyphs).Estimate,7}   RR {Shown.Kg(loads.Rr, glyphs).Estimate,7}");
        canvas.Put(column, row + 3, $"total {Shown.Kg(newest.Loads.TotalKg, glyphs).Bare(glyphs)}");
        canvas.Put(column, row + 4, PatchWords.Of(newest, glyphs), Ink.Faint);
        var expected = session.OpenPrediction ?? (session.Plan is { AlreadyThere: false } plan ? plan.Predicted : null);
        if (expected is null)
            return;
        canvas.Put(column, row + 5, "expected next", Ink.Faint);
        canvas.Put(column, row + 6, $"{Shown.Percent(expected.CrossWeightPercent).Full(glyphs)}", Ink.Strong);
    }

    /// <summary>How a verdict on the target is drawn.</summary>
    public static Ink InkOf(Aim aim) => aim switch
    {
        Aim.Within => Ink.Good,
        Aim.High or Aim.Low => Ink.Bad,
        _ => Ink.Uncertain,
    };
}
