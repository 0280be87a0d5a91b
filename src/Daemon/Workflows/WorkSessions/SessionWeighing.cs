using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>An adjustment on record, not yet weighed or weighed with the reading after it.</summary>
/// <param name="Turns">Up positive.</param>
/// <param name="Predicted">Made when it was recorded; null when it was only named afterwards.</param>
/// <param name="Note">What the crew said.</param>
/// <param name="Who">Who recorded it.</param>
/// <param name="At">UTC.</param>
/// <param name="Entry">Its entry in the ledger.</param>
internal sealed record SessionAdjustment(Corners Turns, StatedPrediction? Predicted, string Note, string Who, DateTimeOffset At, long Entry);

/// <summary>Turns on record were put right: what had been written, and who says what was done.</summary>
/// <param name="Recorded">As it had been written, up positive.</param>
/// <param name="Done">What was really turned.</param>
/// <param name="Who">Who put it right.</param>
/// <param name="At">UTC.</param>
/// <param name="Entry">Its entry in the ledger.</param>
internal sealed record TurnCorrection(Corners Recorded, Corners Done, string Who, DateTimeOffset At, long Entry);

/// <summary>A reading of the session.</summary>
internal sealed record SessionWeighing
{
    /// <summary>From 0, the baseline.</summary>
    public required int Number { get; init; }

    /// <summary>As it was put on record.</summary>
    public required WeighingTaken Step { get; init; }

    /// <summary>Turns made since the baseline, this weighing's own among them.</summary>
    public required Corners TurnsSinceBaseline { get; init; }

    /// <summary>What was turned before it; null: the untouched car was settled again.</summary>
    public SessionAdjustment? Adjustment { get; init; }

    /// <summary>UTC.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Who weighed it.</summary>
    public required string Who { get; init; }

    /// <summary>Its entry in the ledger.</summary>
    public required long Entry { get; init; }

    /// <summary>False: something else than the perches changed after it, or it verifies the bars.</summary>
    public bool Counts { get; init; } = true;

    /// <summary>True once the crew has answered what was found with it: confirmed the step, or named the change.</summary>
    public bool Answered { get; init; }

    /// <summary>What had been recorded before it, where somebody put that right later; null: nothing was put right.</summary>
    public TurnCorrection? Correction { get; init; }

    /// <summary>Name of a change that was found with it.</summary>
    public string ChangeName { get; init; } = "";

    /// <summary>What was found with it and is not answered yet.</summary>
    public IReadOnlyList<Diagnostic> OpenFindings => Answered ? AfterNaming : Step.Findings;

    /// <summary>What is still wrong with the name that its change got: turns that do not lead to this reading.</summary>
    public IReadOnlyList<Diagnostic> AfterNaming { get; init; } = [];

    /// <summary>(RF + LR) / total, percent.</summary>
    public double CrossWeightPercent => Step.Reading.CrossWeightPercent;
}
