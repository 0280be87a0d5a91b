using ScaleLink.Daemon.Work;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Learning;
using ScaleLink.Measure;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>Readings, adjustments and predictions of a session in the words of the public API.</summary>
internal static class CaptureMapping
{
    public static Wire.CaptureRecord Capture(SessionCapture capture)
    {
        var wire = new Wire.CaptureRecord
        {
            Number = (uint)capture.Number,
            At = capture.At.ToWire(),
            Who = capture.Who,
            Loads = capture.Step.Reading.Whole.ToWire(),
            HeightsMm = capture.Step.HeightsMm?.ToWire(),
            Adjustment = capture.Adjustment is { } a ? Adjustment(a) : null,
            Note = capture.ChangeName.Length > 0 ? string.Join("; ", new[] { capture.Step.Note, capture.ChangeName }.Where(n => n.Length > 0)) : capture.Step.Note,
            TurnsSinceBaseline = capture.TurnsSinceBaseline.ToWire(),
            Entry = (ulong)capture.Entry,
            Counts = capture.Counts,
            Answered = capture.Answered,
        };
        wire.Findings.AddRange(capture.Step.Findings.Concat(capture.AfterNaming).Select(WireValues.ToWire));
        wire.Causes.AddRange(capture.Step.Causes.Select(Cause));
        wire.Calibrations.AddRange(capture.Step.Reading.Calibrations);
        wire.Patch.AddRange(capture.Step.Reading.Patch.Select(p => new Wire.PatchInReading { Name = p.Name, SizeKg = p.SizeKg?.ToWire() }));
        return wire;
    }

    public static Wire.Adjustment Adjustment(SessionAdjustment adjustment) => new()
    {
        Turns = adjustment.Turns.ToWire(),
        Words = Wording.Turns(adjustment.Turns),
        Predicted = adjustment.Predicted is { } predicted ? Prediction(predicted) : null,
        Who = adjustment.Who,
        At = adjustment.At.ToWire(),
        Entry = (ulong)adjustment.Entry,
    };

    public static Wire.Prediction Prediction(StatedPrediction predicted) => new()
    {
        Turns = predicted.Turns.ToWire(),
        CrossWeightPercent = predicted.CrossWeightPercent.ToWire(),
        Loads = new LoadSummary(predicted.LoadsKg, predicted.LoadCovariance).ToWire(),
        HeightChangesMm = predicted.HeightChangesMm.ToWire(predicted.HeightUncertaintiesMm),
    };

    public static Wire.Standing Standing(Standing standing) => new()
    {
        CrossWeightPercent = standing.CrossWeightPercent.ToWire(),
        ExpandedPercent = standing.CrossWeightPercent.HalfWidth(),
        Settles = (uint)standing.Settles,
        ScatterPercent = standing.Scatter.Percent,
        ScatterDegreesOfFreedom = standing.Scatter.DegreesOfFreedom,
        Verdict = standing.Verdict switch
        {
            Aim.Within => Wire.AimVerdict.OnTarget,
            Aim.TooCloseToTell => Wire.AimVerdict.TooCloseToTell,
            Aim.High => Wire.AimVerdict.High,
            Aim.Low => Wire.AimVerdict.Low,
            _ => Wire.AimVerdict.Unspecified,
        },
        Words = standing.Words,
    };

    public static Wire.TracePoint Point(TracePoint point) => new()
    {
        Step = (uint)point.Step,
        CrossWeightPercent = point.CrossWeightPercent,
        ExpandedPercent = point.ExpandedPercent,
        PredictedPercent = point.PredictedPercent?.ToWire(),
        Label = point.Label,
    };

    private static Wire.LikelyCause Cause(LikelyCause cause) => new()
    {
        Cause = string.Concat(cause.Cause.ToString().Select((c, i) => i > 0 && char.IsUpper(c) ? $"_{char.ToLowerInvariant(c)}" : $"{char.ToLowerInvariant(c)}")),
        Explains = cause.Explains,
        Words = cause.Words,
    };
}
