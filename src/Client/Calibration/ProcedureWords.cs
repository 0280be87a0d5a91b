using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;
using static ScaleLink.Measure.Sentences.Arguments;
using Sentence = ScaleLink.Measure.Sentences.Sentence;

namespace ScaleLink.Client.Calibration;

/// <summary>What is said of a calibration procedure.</summary>
internal static class ProcedureWords
{
    private const int LongestWords = 400;

    // Met in turn whenever a load comes: not at rest, not there yet, on the way, out of step for a moment.
    private static readonly Code[] Passing = [CalibrationCodes.Unsettled, CalibrationCodes.LoadUnchanged, CalibrationCodes.NotMonotonic, CalibrationCodes.WrongUnit, CalibrationCodes.UnexpectedLoad, CalibrationCodes.OutOfStep];
    // Of these, what is no news to somebody with a mass in the hands.
    private static readonly Code[] Plain = [CalibrationCodes.Unsettled, CalibrationCodes.LoadUnchanged, CalibrationCodes.OutOfStep];

    /// <summary>Whether a refusal goes by itself while the load comes.</summary>
    public static bool IsPassing(Code code) => Passing.Contains(code);

    /// <summary>Why the step is not taken yet, for the person at the pad: what to do only where it is not plain.</summary>
    public static string Waiting(Api.V1.Diagnostic why, Glyphs glyphs)
    {
        var trouble = DiagnosticReader.Read(why);
        return Plain.Contains(trouble.Code) ? $"Not yet: {glyphs.Tell(trouble.Message)}" : glyphs.Tell(trouble);
    }

    /// <summary>Whether the pad is to be empty and does not look so: whoever knows better can say why.</summary>
    public static bool IsSaidToBeEmpty(ProcedureView procedure) =>
        procedure.WaitingFor is { } why && (why.Code == CalibrationCodes.ZeroLoaded || why.Code == CalibrationCodes.FirstZeroLoaded);

    /// <summary>The present step as an order: "put on 20 A + 20 B".</summary>
    public static string Order(ProcedureStep step) => PeerText.Clean(step.Words, LongestWords);

    /// <summary>Part of the calibration procedure: "repetition 2, way down".</summary>
    public static string Part(ProcedureStage stage, uint repetition, bool wayDown) => stage switch
    {
        ProcedureStage.Preload => repetition > 0 ? $"preload {repetition}" : "preload",
        ProcedureStage.CornerLoad => "corner load",
        ProcedureStage.Repetitions => $"repetition {repetition}, way {(wayDown ? "down" : "up")}",
        ProcedureStage.Creep => "creep",
        _ => "",
    };

    /// <summary>Names of <c>--json</c> are part of the contract.</summary>
    public static string State(ProcedureState state) => state switch
    {
        ProcedureState.None => "none",
        ProcedureState.Measuring => "measuring",
        ProcedureState.Review => "review",
        ProcedureState.Adopted => "adopted",
        ProcedureState.Rejected => "rejected",
        ProcedureState.Abandoned => "abandoned",
        _ => "unknown",
    };

    /// <summary>A point that was read.</summary>
    public static string Point(ProcedurePoint point, Glyphs glyphs)
    {
        var residual = point.HasResidualKg ? (Sentence)$", residual {Kg(point.ResidualKg):+0.000}" : default;
        var read = point.HasReadKg ? (Sentence)$" reads {Kg(point.ReadKg):0.000}" : default;
        var spot = point.Spot.Length > 0 ? $" {PeerText.Clean(point.Spot, 40)}" : "";
        return glyphs.Line($"{StackText.Of(point.Load)}{spot}{read}{residual}");
    }

    /// <summary>How to go on after leaving.</summary>
    public static string Resume(ProcedureView? view, Corner corner) => view?.State switch
    {
        ProcedureState.Measuring => $"The calibration procedure of {corner.Name()} is kept with its {view.Points.Count} points. Go on with: scalelink calibrate {corner.Name()}",
        ProcedureState.Review => $"The calibration procedure of {corner.Name()} is finished and kept. Decide with: scalelink calibrate {corner.Name()}",
        _ => "",
    };
}
