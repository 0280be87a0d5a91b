using ScaleLink.Daemon.Workflows.WorkSessions.Checks;
using ScaleLink.Daemon.Workflows.WorkSessions.Standings;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>What a session waits for.</summary>
internal enum SessionStage
{
    /// <summary>Checks of the preparation.</summary>
    Preparing,
    /// <summary>The baseline reading.</summary>
    Baseline,
    /// <summary>A turn, or another settle.</summary>
    Planning,
    /// <summary>The reading after an adjustment.</summary>
    Settling,
    /// <summary>The name of a change that nobody recorded.</summary>
    Naming,
    /// <summary>Last steps.</summary>
    Finishing,
    /// <summary>Nothing: it has ended.</summary>
    Finished,
    /// <summary>Nothing: it was given up.</summary>
    Abandoned,
}

/// <summary>A session with what the bay sees at this moment.</summary>
/// <param name="Session">As its steps made it.</param>
/// <param name="Facts">What the bay sees; after the baseline, what it saw then.</param>
/// <param name="Unnamed">A change that the settled car shows and nobody recorded; null: none, or nobody looked.</param>
internal sealed record SessionView(WorkSession Session, BayFacts Facts, Diagnostic? Unnamed = null)
{
    /// <summary>What is uncertain now: the change that nobody recorded, then what the newest reading left unanswered.</summary>
    public IReadOnlyList<Diagnostic> Findings => [.. Unnamed is { } unnamed ? [unnamed] : Array.Empty<Diagnostic>(), .. Session.Weighings is [.., var newest] ? newest.OpenFindings : []];

    /// <summary>What it waits for.</summary>
    public SessionStage Stage => Session switch
    {
        { End.Abandoned: true } => SessionStage.Abandoned,
        { End: not null } => SessionStage.Finished,
        { Baseline: null } => Preparation.All(c => c.IsClosed) ? SessionStage.Baseline : SessionStage.Preparing,
        { NeedsName: true } => SessionStage.Naming,
        { Open.Count: > 0 } => SessionStage.Settling,
        _ => Standing.Of(Session) is { IsWithin: true } ? SessionStage.Finishing : SessionStage.Planning,
    };

    /// <summary>So many settles more are likely to decide the verdict, and nothing else was begun yet; 0: none is asked for.</summary>
    public int SettlesAskedFor => Session is { Open.Count: 0, NeedsName: false, End: null } && !SessionRules.MayConfirm(this) && LastSteps.All(c => c.Mark is null) ? Standing.Of(Session)?.MoreSettles ?? 0 : 0;

    /// <summary>The bars are connected again, and no reading has shown yet that they are without preload.</summary>
    public bool IsBarReadingDue => Stage == SessionStage.Finishing && LastSteps.Any(c => c.Item.Key == CheckLists.BarsAgain && c.IsDone) && LastSteps.Any(c => c is { Item.Key: CheckLists.BarsVerified, IsClosed: false, Seen: null });

    /// <summary>A reading is what comes next.</summary>
    public bool IsReadingNext => Stage switch
    {
        SessionStage.Baseline => true,
        SessionStage.Settling => PerchWork.Of(Session) is not { } work || work.Left == default,
        SessionStage.Planning => !SessionRules.MayConfirm(this) && SessionPlan.Of(Session) is not { Plan.AlreadyThere: false },
        SessionStage.Finishing => SettlesAskedFor > 0 || IsBarReadingDue,
        _ => false,
    };

    /// <summary>Checks before the baseline.</summary>
    public IReadOnlyList<CheckView> Preparation =>
        [.. CheckLists.Preparation(Session.Car, Session.Start.LeaveOut).Select(i => new CheckView(i, Session.Marks.GetValueOrDefault(i.Key), Seen(i.Key)))];

    /// <summary>Checks before the end.</summary>
    public IReadOnlyList<CheckView> LastSteps =>
        [.. CheckLists.LastSteps(Session.Car, Session.Start.LeaveOut, Session.BarsAreOff).Select(i => new CheckView(i, Session.Marks.GetValueOrDefault(i.Key), SeenLast(i.Key)))];

    private SeenCheck? Seen(string key) => (Session.Baseline?.Step.Seen ?? Facts.Seen).FirstOrDefault(s => s.Key == key);

    // The newest reading with bars connected answers whether they are without preload, as long as nothing was turned after it.
    private SeenCheck? SeenLast(string key) => key == CheckLists.BarsVerified && Session.Weighings is [.., { Step.Kind: WeighingKind.Verification } newest]
        ? new(key, newest.Step.Findings.Count == 0, $"{newest.CrossWeightPercent:0.00} % with bars connected", newest.Step.Findings)
        : null;
}

/// <summary>A check with what crew and bay say about it.</summary>
internal sealed record CheckView(CheckItem Item, CheckMark? Mark, SeenCheck? Seen)
{
    /// <summary>Seen to, by the crew or by the bay.</summary>
    public bool IsDone => Mark is { Done: true } || (Mark is null && Seen is { Holds: true });

    /// <summary>The bay looks for itself, and it is not so: nobody can tick it.</summary>
    public bool IsSeenOtherwise => Seen is { Holds: false };

    /// <summary>What the crew found or set; what the bay sees where the crew says nothing.</summary>
    public Sentence Value => Mark is { Value.Length: > 0 } mark ? mark.Value : Seen?.Value ?? default;

    /// <summary>Nothing is open about it.</summary>
    public bool IsClosed => IsDone || Mark is { Skipped: true };
}
