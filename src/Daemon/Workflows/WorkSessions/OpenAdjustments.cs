using System.Collections.Immutable;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;
using ScaleLink.Weighing.WorkSessions.Learning;
using ScaleLink.Weighing.WorkSessions.Planning;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>What becomes of adjustments between being recorded and being weighed.</summary>
internal static class OpenAdjustments
{
    /// <summary>Several before one reading are one step; null: there are none.</summary>
    public static SessionAdjustment? Joined(WorkSession session, long entry) => session.Open switch
    {
        [] => null,
        [var one] => one,
        [.., var last] => last with { Turns = session.OpenTurns, Note = string.Join("; ", session.Open.Select(a => a.Note).Where(n => n.Length > 0)), Entry = entry },
    };

    /// <summary>What was really done, with what it should have led to; null: nothing was turned.</summary>
    public static SessionAdjustment? Corrected(TurnCorrection correction, StepLearner before) => correction.Done == default ? null
        : new(correction.Done, StatedPrediction.Of(correction.Done, PerchPlanner.Forecast(before, correction.Done)), "", correction.Who, correction.At, correction.Entry);

    /// <summary>The same less what was recorded last at one corner; what the rest should lead to is worked out again.</summary>
    public static ImmutableList<SessionAdjustment> Without(WorkSession session, Corner corner)
    {
        var last = session.Open.FindLastIndex(a => a.Turns[corner] != 0);
        if (last < 0)
            return session.Open;
        var rest = session.Open[last] with { Turns = session.Open[last].Turns.With(corner, 0) };
        return Foreseen(rest.Turns == default ? session.Open.RemoveAt(last) : session.Open.SetItem(last, rest), session.Known!);
    }

    /// <summary>The same with what they should lead to by what is known.</summary>
    public static ImmutableList<SessionAdjustment> Foreseen(ImmutableList<SessionAdjustment> open, StepLearner known)
    {
        var sum = default(Corners);
        return open.ConvertAll(a => a with { Predicted = StatedPrediction.Of(sum += a.Turns, PerchPlanner.Forecast(known, sum)) });
    }
}
