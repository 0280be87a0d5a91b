using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Proving;

/// <summary>What is said of a proof.</summary>
internal static class ProofWords
{
    private const int LongestWords = 400;

    // Met in turn whenever a load comes: not at rest, not there yet, on the way, out of step for a moment.
    private static readonly Code[] Passing = [CalibrationCodes.Unsettled, CalibrationCodes.LoadUnchanged, CalibrationCodes.NotMonotonic, CalibrationCodes.WrongUnit, CalibrationCodes.UnexpectedLoad, CalibrationCodes.OutOfStep];
    // Of these, what is no news to somebody with a mass in the hands.
    private static readonly Code[] Plain = [CalibrationCodes.Unsettled, CalibrationCodes.LoadUnchanged, CalibrationCodes.OutOfStep];

    /// <summary>Whether a refusal goes by itself while the load comes.</summary>
    public static bool IsPassing(Code code) => Passing.Contains(code);

    /// <summary>Why the step is not taken yet, for the person at the pad: what to do only where it is not plain.</summary>
    public static string Waiting(Api.V1.Diagnostic why)
    {
        var trouble = DiagnosticReader.Read(why);
        return Plain.Contains(trouble.Code) ? $"Not yet: {trouble.Message}" : $"{trouble}";
    }

    /// <summary>The present step as an order: "put on 20 A + 20 B".</summary>
    public static string Order(ProofStep step) => PeerText.Clean(step.Words, LongestWords);

    /// <summary>Part of the proof: "run 2, way down".</summary>
    public static string Part(ProofStage stage, uint run, bool wayDown) => stage switch
    {
        ProofStage.Preload => run > 0 ? $"preload {run}" : "preload",
        ProofStage.CornerLoad => "corner load",
        ProofStage.Runs => $"run {run}, way {(wayDown ? "down" : "up")}",
        ProofStage.Creep => "creep",
        _ => "",
    };

    /// <summary>Names of <c>--json</c> are part of the contract.</summary>
    public static string State(ProofState state) => state switch
    {
        ProofState.None => "none",
        ProofState.Measuring => "measuring",
        ProofState.Review => "review",
        ProofState.Adopted => "adopted",
        ProofState.Rejected => "rejected",
        ProofState.Abandoned => "abandoned",
        _ => "unknown",
    };

    /// <summary>A point that was read.</summary>
    public static string Point(ProofPoint point)
    {
        var residual = point.HasResidualKg ? $", residual {point.ResidualKg:+0.000;-0.000;0.000} kg" : "";
        var read = point.HasReadKg ? $" reads {point.ReadKg:0.000} kg" : "";
        var spot = point.Spot.Length > 0 ? $" {PeerText.Clean(point.Spot, 40)}" : "";
        return $"{StackText.Of(point.Load)}{spot}{read}{residual}";
    }

    /// <summary>How to go on after leaving.</summary>
    public static string Resume(ProofView? view, Corner corner) => view?.State switch
    {
        ProofState.Measuring => $"The proof of {corner.Name()} is kept with its {view.Points.Count} points. Go on with: scalelink calibrate {corner.Name()}",
        ProofState.Review => $"The proof of {corner.Name()} is finished and kept. Decide with: scalelink calibrate {corner.Name()}",
        _ => "",
    };
}
