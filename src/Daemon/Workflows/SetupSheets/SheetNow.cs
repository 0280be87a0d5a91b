using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Daemon.Workflows.SetupSheets;

/// <summary>What a car has on it now: the sheet that it was set up by, and what work sessions have recorded since.</summary>
/// <param name="Fitted">Null: nobody has said how it is set up.</param>
/// <param name="TurnsSince">At the perches, up positive; what was put right counts as it was put right.</param>
/// <param name="HeightsMm">Ride heights by now where they are measured; null: not known, or nothing has happened since.</param>
/// <param name="Remarks">What else sessions say, oldest first.</param>
internal sealed record SheetNow(FittedSheet? Fitted, Corners TurnsSince, Corners? HeightsMm, IReadOnlyList<Sentence> Remarks)
{
    /// <summary>Of a car.</summary>
    public static SheetNow Of(FittedSheet? fitted, string car, SessionLedger sessions)
    {
        if (fitted is null)
            return new(null, default, null, []);
        var since = sessions.All().Where(s => s.Car.Name == car && s.Entry > fitted.Since).ToList();
        var turned = since.ConvertAll(s => (Session: s, Turns: Turns(s) - Turns(AsOf(s, fitted.Since))));
        var heights = turned.Aggregate(fitted.Sheet.Content.Four("heights.ride_height"), (h, s) => After(h, s.Session, s.Turns, fitted.Since));
        return new(fitted, turned.Aggregate(default(Corners), (sum, s) => sum + s.Turns), since.Count > 0 ? heights : null, [.. since.SelectMany(s => Said(s, fitted.Since))]);
    }

    /// <summary>Where the perches stand, turns up from their marks; null where the sheet does not say where they stood.</summary>
    public Corners? PerchTurns => Fitted?.Sheet.Content.Four("springs.perch_turns") is { } stood ? stood + TurnsSince : null;

    // Measured again is better than predicted.
    private static Corners? After(Corners? heights, WorkSession session, Corners turns, long since) =>
        session.Steps.Any(s => s.Entry > since && s.Step is (HeightsEntered or WeighingTaken { HeightsMm: not null })) ? session.HeightsNowMm
        : turns == default ? heights
        : session.Known is { } known ? heights + BodyPlane.AtMarks(session.Car, known.Effects.HeightsPerTurn) * turns : null;

    private static Corners Turns(WorkSession? session) => session is null ? default : session.TurnsSinceBaseline + session.OpenTurns;

    // A session may have been under way when the sheet was saved; what it had turned by then is in the sheet.
    private static WorkSession? AsOf(WorkSession session, long entry)
    {
        if (session.Steps.Count > 0 && session.Steps[0].Entry > entry)
            return null;
        var then = WorkSession.Begin(session.Start, session.Id, session.StartedAt, session.Who, 0);
        return session.Steps.TakeWhile(s => s.Entry <= entry).Aggregate(then, (s, step) => SessionFold.Apply(s, step.Step, step.At, step.Who, step.Entry));
    }

    private static IEnumerable<Sentence> Said(WorkSession session, long since) => session.Steps.Where(s => s.Entry > since).Select(s => Said(session.Id, s.Step)).OfType<Sentence>();

    private static Sentence? Said(string session, SessionStep step) => step switch
    {
        ChangeNamed { Other: { Length: > 0 } other } => $"Session {session}: changed besides the perches: {other}.",
        HeightsEntered { HeightsMm: var h } => Heights(session, h),
        WeighingTaken { HeightsMm: { } h } => Heights(session, h),
        _ => null,
    };

    private static Sentence Heights(string session, Corners h) => $"Session {session}: ride heights measured, LF {Mm(h.LF):0.0}, RF {Mm(h.RF):0.0}, LR {Mm(h.LR):0.0}, RR {Mm(h.RR):0.0}.";
}
