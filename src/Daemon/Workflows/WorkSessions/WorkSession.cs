using System.Collections.Immutable;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.WorkSessions.Checks;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Cars.Files;
using ScaleLink.Weighing.Statics;
using ScaleLink.Weighing.WorkSessions.Learning;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>A step on record.</summary>
internal sealed record PastStep(SessionStep Step, DateTimeOffset At, string Who, long Entry);

/// <summary>A work session as its steps have made it. Immutable: the same steps give the same session again.</summary>
internal sealed record WorkSession
{
    /// <summary>Names it.</summary>
    public required string Id { get; init; }

    /// <summary>How it began.</summary>
    public required SessionStarted Start { get; init; }

    /// <summary>Its car with the session's targets, bars as the file says.</summary>
    public required CarModel Car { get; init; }

    /// <summary>UTC.</summary>
    public required DateTimeOffset StartedAt { get; init; }

    /// <summary>Who began it.</summary>
    public required string Who { get; init; }

    /// <summary>What the crew said about checks, by key.</summary>
    public ImmutableDictionary<string, CheckMark> Marks { get; init; } = ImmutableDictionary<string, CheckMark>.Empty;

    /// <summary>Readings, the baseline first.</summary>
    public ImmutableList<SessionWeighing> Weighings { get; init; } = [];

    /// <summary>Adjustments without a reading after them.</summary>
    public ImmutableList<SessionAdjustment> Open { get; init; } = [];

    /// <summary>What is known of the car by now; null before the baseline.</summary>
    public StepLearner? Known { get; init; }

    /// <summary>The same before the newest reading.</summary>
    public StepLearner? KnownBefore { get; init; }

    /// <summary>Ride heights measured last, mm, and the turns made since the baseline by then.</summary>
    public (Corners Mm, Corners AtTurns)? Heights { get; init; }

    /// <summary>Turns that were put right, by the number of the reading after them.</summary>
    public ImmutableDictionary<int, TurnCorrection> Corrections { get; init; } = ImmutableDictionary<int, TurnCorrection>.Empty;

    /// <summary>All steps after the first, oldest first: what is put right later changes what follows from them.</summary>
    public ImmutableList<PastStep> Steps { get; init; } = [];

    /// <summary>Who has read the cautions, and when.</summary>
    public ImmutableDictionary<string, DateTimeOffset> Cautioned { get; init; } = ImmutableDictionary.Create<string, DateTimeOffset>(StringComparer.OrdinalIgnoreCase);

    /// <summary>True while a change that nobody recorded waits for its name.</summary>
    public bool NeedsName { get; init; }

    /// <summary>How it ended; null while it is open.</summary>
    public SessionEnded? End { get; init; }

    /// <summary>UTC.</summary>
    public DateTimeOffset? EndedAt { get; init; }

    /// <summary>Newest entry in the ledger.</summary>
    public required long Entry { get; init; }

    /// <summary>The baseline; null before it.</summary>
    public SessionWeighing? Baseline => Weighings.Count > 0 ? Weighings[0] : null;

    /// <summary>Turns made since the baseline and weighed.</summary>
    public Corners TurnsSinceBaseline => Weighings.Count > 0 ? Weighings[^1].TurnsSinceBaseline : default;

    /// <summary>Turns recorded and not yet weighed.</summary>
    public Corners OpenTurns => Open.Aggregate(default(Corners), (sum, a) => sum + a.Turns);

    /// <summary>Whether the crew took the bars off before the baseline.</summary>
    public bool BarsAreOff => Marks.TryGetValue(CheckLists.Bars, out var mark) && mark.Done;

    /// <summary>Whether they are off at this moment: not any more once they are connected again.</summary>
    public bool BarsAreOffNow => BarsAreOff && Marks.GetValueOrDefault(CheckLists.BarsAgain) is not { Done: true };

    /// <summary>Ride heights by now, mm: measured last, and carried on by what turns do. Null: never measured.</summary>
    public Corners? HeightsNowMm => Heights is { } h && Known is { } known ? h.Mm + BodyPlane.AtMarks(Car, known.Effects.HeightsPerTurn) * (TurnsSinceBaseline - h.AtTurns) : Heights?.Mm;

    /// <summary>The session that a first step begins.</summary>
    public static WorkSession Begin(SessionStarted start, string id, DateTimeOffset at, string who, long entry)
    {
        ArgumentNullException.ThrowIfNull(start);
        var car = CarFile.Read(start.CarFile).Car ?? throw new StepRefusedException(SessionCodes.InputUnusable, "The car file of the session cannot be read.", "Save the car again and start a new session.");
        var targets = car.Targets with { CrossWeightPercent = start.TargetPercent, CrossWeightTolerancePercent = start.TolerancePercent };
        return new() { Id = id, Start = start, Car = car with { Targets = targets }, StartedAt = at, Who = who, Entry = entry };
    }
}
