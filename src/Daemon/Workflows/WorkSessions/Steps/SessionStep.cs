using System.Text.Json.Serialization;
using ScaleLink.Daemon.Workflows.WorkSessions.Checks;
using ScaleLink.Measure;
using ScaleLink.Weighing.WorkSessions.Learning;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Steps;

/// <summary>One acknowledged step of a work session, as it stands in the ledger. A session is what its steps make of it.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "step")]
[JsonDerivedType(typeof(SessionStarted), "started")]
[JsonDerivedType(typeof(CheckSet), "check")]
[JsonDerivedType(typeof(ChecksTicked), "checks")]
[JsonDerivedType(typeof(WeighingTaken), "capture")]
[JsonDerivedType(typeof(AdjustmentRecorded), "adjustment")]
[JsonDerivedType(typeof(AdjustmentUndone), "undo")]
[JsonDerivedType(typeof(TurnsCorrected), "corrected")]
[JsonDerivedType(typeof(ChangeNamed), "named")]
[JsonDerivedType(typeof(StepConfirmed), "confirmed")]
[JsonDerivedType(typeof(HeightsEntered), "heights")]
[JsonDerivedType(typeof(CautionsRead), "cautions")]
[JsonDerivedType(typeof(SessionEnded), "ended")]
internal abstract record SessionStep;

/// <summary>A session began. The car file travels with it, so that it can be read without anything else; so does what was entered beside the checks of its last session.</summary>
internal sealed record SessionStarted(
    string Bay, string CarHash, string CarFile, string Title, double TargetPercent, double TolerancePercent, IReadOnlyList<string> LeaveOut, [property: JsonPropertyName("recipe")] SettleMethod SettleMethod,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyDictionary<string, string>? LastValues = null) : SessionStep;

/// <summary>A check was ticked, skipped or opened again.</summary>
internal sealed record CheckSet(string Key, bool Done, bool Skipped, string Value, string Note) : SessionStep;

/// <summary>All checks that were open were ticked together: none of them is confirmed by itself.</summary>
internal sealed record ChecksTicked(IReadOnlyList<string> Keys) : SessionStep;

/// <summary>What a reading was taken for.</summary>
internal enum WeighingKind
{
    /// <summary>The first one: what everything is compared with.</summary>
    Baseline,
    /// <summary>After an adjustment, or after settling the untouched car again.</summary>
    Settle,
    /// <summary>After the bars were connected again: it must be as before.</summary>
    Verification,
}

/// <summary>A reading was put on record, with what was found about it at that moment.</summary>
/// <param name="Kind">What for.</param>
/// <param name="Reading">The loads.</param>
/// <param name="HeightsMm">Ride heights measured with it, mm.</param>
/// <param name="Note">What the crew said.</param>
/// <param name="Seen">With the baseline: checks that the bay saw for itself.</param>
/// <param name="NeedsName">True when the loads changed although nothing was recorded.</param>
/// <param name="Findings">Against the prediction or the reading before.</param>
/// <param name="Causes">Likely causes of a step that disagrees.</param>
internal sealed record WeighingTaken(
    WeighingKind Kind, RecordedWeighing Reading, Corners? HeightsMm, string Note, IReadOnlyList<SeenCheck> Seen, bool NeedsName,
    IReadOnlyList<Diagnostic> Findings, IReadOnlyList<LikelyCause> Causes) : SessionStep;

/// <summary>Perches were turned; what that should do was predicted before the next reading.</summary>
internal sealed record AdjustmentRecorded(Corners Turns, bool AsPlanned, string Note, StatedPrediction Predicted) : SessionStep;

/// <summary>The last recorded adjustment was not made after all; with a corner, what was recorded last there.</summary>
internal sealed record AdjustmentUndone([property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] Corner? Corner = null) : SessionStep;

/// <summary>Something else was turned before a reading than had been recorded.</summary>
/// <param name="Weighing">Number of the reading.</param>
/// <param name="Turns">What was really turned, up positive.</param>
internal sealed record TurnsCorrected(int Weighing, Corners Turns) : SessionStep;

/// <summary>A change that nobody had recorded got its name: turns, something else, or (both null) nothing but settling.</summary>
internal sealed record ChangeNamed(Corners? Turns, string? Other) : SessionStep;

/// <summary>The newest step is believed although it surprised.</summary>
internal sealed record StepConfirmed : SessionStep;

/// <summary>Ride heights were measured, mm.</summary>
internal sealed record HeightsEntered(Corners HeightsMm) : SessionStep;

/// <summary>Whoever takes this step has read what can hurt in a session.</summary>
internal sealed record CautionsRead : SessionStep;

/// <summary>The session ended.</summary>
internal sealed record SessionEnded(bool Abandoned, string Because, string Words) : SessionStep;
