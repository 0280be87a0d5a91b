using ScaleLink.Daemon.Workflows.WorkSessions.Standings;
using ScaleLink.Weighing.WorkSessions.Planning;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>What a session says to its crew.</summary>
internal static class SessionWords
{
    /// <summary>What to do now.</summary>
    public static string Next(SessionView view) => view.Stage switch
    {
        _ when view.Unnamed is not null => "The car has changed since its last reading: record what was turned, or settle again and weigh.",
        SessionStage.Preparing => $"Preparation: see to it and tick it: {view.Preparation.First(c => !c.IsClosed).Item.Title.ToLowerInvariant()}.",
        SessionStage.Baseline => $"Settle the car ({string.Join(", ", view.Session.Start.SettleMethod.Actions)}), then weigh the baseline.",
        SessionStage.Naming => "The loads changed although nothing was recorded: say what was changed.",
        SessionStage.Settling when PerchWork.Of(view.Session) is { } work && work.Left != default => $"Still to turn: {CrewWords.Turns(work.Left)}.",
        SessionStage.Settling => "Turned. Settle the car, hands off, then weigh.",
        SessionStage.Planning or SessionStage.Finishing when SessionRules.MayConfirm(view) => "Not what was expected: find out why before the next turn.",
        SessionStage.Finishing when view.SettlesAskedFor is > 0 and var more => $"On target so far: settle {Standing.Times(more)} more to be sure, and weigh each time.",
        SessionStage.Finishing when view.IsBarReadingDue => "The bars are connected again: settle the car, hands off, then weigh once more.",
        SessionStage.Planning => SessionPlan.Of(view.Session) is { Plan: { AlreadyThere: false } plan } ? $"{plan.Words}." : "Settle once more and weigh, to be sure.",
        SessionStage.Finishing => view.LastSteps.FirstOrDefault(c => !c.IsClosed) is { } open ? $"Last steps: see to it and tick it: {open.Item.Title.ToLowerInvariant()}." : "Finish the session.",
        SessionStage.Finished => "Finished.",
        _ => "Abandoned.",
    };

    /// <summary>What can hurt while that is done.</summary>
    public static IReadOnlyList<string> Cautions(SessionView view) => view.Stage switch
    {
        SessionStage.Preparing or SessionStage.Baseline or SessionStage.Naming => [Weighing.Balance.Cautions.Settling],
        SessionStage.Planning or SessionStage.Settling => [Weighing.Balance.Cautions.Perches, Weighing.Balance.Cautions.Settling],
        SessionStage.Finishing => [Weighing.Balance.Cautions.Perches, Weighing.Balance.Cautions.Track],
        _ => [Weighing.Balance.Cautions.Track, Weighing.Balance.Cautions.NotForTrade],
    };

    /// <summary>The same in one line, for who has read the whole.</summary>
    public static string CautionLine(SessionStage stage) => stage switch
    {
        SessionStage.Preparing or SessionStage.Baseline or SessionStage.Naming => Weighing.Balance.Cautions.SettlingLine,
        SessionStage.Planning or SessionStage.Settling => Weighing.Balance.Cautions.PerchesLine,
        _ => Weighing.Balance.Cautions.TrackLine,
    };
}
