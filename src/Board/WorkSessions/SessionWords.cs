using ScaleLink.Api.V1;

namespace ScaleLink.Board.WorkSessions;

/// <summary>A work session in the page's words.</summary>
internal static class SessionWords
{
    /// <summary>What it waits for.</summary>
    public static string State(Session session) => session.State == SessionState.Settling && session.Left().Count > 0 ? "turning" : State(session.State);

    public static string State(SessionState state) => state switch
    {
        SessionState.Preparing => "preparing the car",
        SessionState.Baseline => "ready for the baseline",
        SessionState.Planning => "ready to turn",
        SessionState.Settling => "turned: settle, then read",
        SessionState.Naming => "a change waits for its name",
        SessionState.Finishing => "last steps",
        SessionState.Finished => "finished",
        SessionState.Abandoned => "given up",
        _ => "unknown",
    };

    /// <summary>Whether it still goes on.</summary>
    public static bool IsOpen(this SessionState state) => state is not (SessionState.Finished or SessionState.Abandoned or SessionState.Unspecified);

    /// <summary>Whether turns of a perch are taken in it now.</summary>
    public static bool TakesTurns(this SessionState state) => state is SessionState.Planning or SessionState.Settling or SessionState.Finishing;

    /// <summary>Whether perches are turned in it: from the baseline to the end, whatever the car does meanwhile.</summary>
    public static bool IsTurning(this Session? session) => session is { Perches.Count: > 0 } && session.State.IsOpen();

    /// <summary>The work at one perch; nothing outside of turning.</summary>
    public static PerchTurn? At(this Session? session, Corner corner) => session.IsTurning() ? session!.Perches.FirstOrDefault(p => p.Corner == corner) : null;

    /// <summary>Perches that something is left to do at.</summary>
    public static IReadOnlyList<PerchTurn> Left(this Session? session) => session.IsTurning() ? [.. session!.Perches.Where(p => p.Left != 0)] : [];

    /// <summary>The plan when it has something to turn.</summary>
    public static PerchPlan? AsPlanned(this PerchPlan? plan) => plan is { AlreadyThere: false } && !plan.Turns.IsZero() ? plan : null;

    /// <summary>What the turns that are open, or else those that are planned, are predicted to do.</summary>
    public static Prediction? Ahead(this Session? session) => session?.OpenPrediction ?? session?.Plan.AsPlanned()?.Predicted;
}
