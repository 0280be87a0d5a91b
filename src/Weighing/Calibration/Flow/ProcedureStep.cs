using System.Text.Json.Serialization;
using ScaleLink.Weighing.Calibration.Masses;

namespace ScaleLink.Weighing.Calibration.Flow;

/// <summary>Where a calibration procedure stands.</summary>
enum ProcedureStage
{
    /// <summary>Highest load on and off, to seat the pad.</summary>
    Preload,
    /// <summary>One mass in several places.</summary>
    CornerLoad,
    /// <summary>Loads up and down.</summary>
    [JsonStringEnumMemberName("Runs")]
    Repetitions,
    /// <summary>Highest load held.</summary>
    Creep,
    /// <summary>All readings are taken; somebody decides.</summary>
    Review,
    /// <summary>The calibration is accepted.</summary>
    Accepted,
    /// <summary>Given up.</summary>
    Abandoned,
}

/// <summary>One reading to take.</summary>
/// <param name="Stage">Part of the calibration procedure.</param>
/// <param name="Load">What must stand on the pad.</param>
/// <param name="Repetition">Number of the repetition or preload, from 1; 0 elsewhere.</param>
/// <param name="Way">Way up or down.</param>
/// <param name="Spot">Where on the pad, in a corner-load test; empty elsewhere.</param>
/// <param name="MinutesHeld">In a creep test, minutes since the first reading under this load.</param>
sealed record ProcedureStep(
    ProcedureStage Stage, LoadStack Load, [property: JsonPropertyName("run")] int Repetition = 0, LoadingWay Way = LoadingWay.Up, string Spot = "", int? MinutesHeld = null);

/// <summary>What to do next.</summary>
/// <param name="Step">The reading to take.</param>
/// <param name="Number">Of the step, from 1.</param>
/// <param name="Of">Steps in all.</param>
/// <param name="Words">For people: what to put on, what to take off.</param>
/// <param name="SettlingSeconds">Time to load and come to rest, by OIML R 60-2:2021, Table 1.</param>
sealed record NextStep(ProcedureStep Step, int Number, int Of, string Words, double SettlingSeconds)
{
    /// <summary>Change of the known masses from the reading before, kg; null where ballast changes.</summary>
    public double? ChangeKg { get; init; }

    /// <summary>True where no reading can show whether the change has been made: somebody has to say so.</summary>
    public bool IsUntold { get; init; }
}
