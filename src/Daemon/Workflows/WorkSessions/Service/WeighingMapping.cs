using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Workflows.WorkSessions.Standings;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.WorkSessions.Learning;
using ScaleLink.Weighing.WorkSessions.Planning;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Service;

/// <summary>Readings, adjustments and predictions of a session in the words of the public API.</summary>
internal static class WeighingMapping
{
    public static Wire.WeighingRecord Weighing(SessionWeighing weighing)
    {
        var wire = new Wire.WeighingRecord
        {
            Number = (uint)weighing.Number,
            At = weighing.At.ToWire(),
            Who = weighing.Who,
            Loads = weighing.Step.Reading.Whole.ToWire(),
            HeightsMm = weighing.Step.HeightsMm?.ToWire(),
            Adjustment = weighing.Adjustment is { } a ? Adjustment(a) : null,
            Note = weighing.ChangeName.Length > 0 ? string.Join("; ", new[] { weighing.Step.Note, weighing.ChangeName }.Where(n => n.Length > 0)) : weighing.Step.Note,
            TurnsSinceBaseline = weighing.TurnsSinceBaseline.ToWire(),
            Entry = (ulong)weighing.Entry,
            Counts = weighing.Counts,
            Answered = weighing.Answered,
        };
        wire.Findings.AddRange(weighing.Step.Findings.Concat(weighing.AfterNaming).Select(WireValues.ToWire));
        wire.Causes.AddRange(weighing.Step.Causes.Select(Cause));
        if (weighing.Correction is { } correction)
            (wire.RecordedTurns, wire.CorrectedBy) = (correction.Recorded.ToWire(), correction.Who);
        wire.Calibrations.AddRange(weighing.Step.Reading.Calibrations);
        wire.Patch.AddRange(weighing.Step.Reading.Patch.Select(p => new Wire.PatchInReading { Name = p.Name, SizeKg = p.SizeKg?.ToWire() }));
        return wire;
    }

    public static Wire.Adjustment Adjustment(SessionAdjustment adjustment) => new()
    {
        Turns = adjustment.Turns.ToWire(),
        Words = CrewWords.Turns(adjustment.Turns),
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

    public static Wire.Standing Standing(Standing standing)
    {
        var wire = Verdict(standing);
        if (standing.MoreSettles is { } more)
            wire.MoreSettles = (uint)more;
        return wire;
    }

    private static Wire.Standing Verdict(Standing standing) => new()
    {
        Headline = standing.Headline,
        CrossWeightPercent = standing.CrossWeightPercent.ToWire(),
        ExpandedPercent = standing.CrossWeightPercent.HalfWidth(),
        Settles = (uint)standing.Settles,
        RepeatabilityPercent = standing.Repeatability.Percent,
        RepeatabilityDegreesOfFreedom = standing.Repeatability.DegreesOfFreedom,
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
        Number = (uint)point.Number,
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
        TypedWords = Wire.Sentence.Of(cause.Words),
        Turns = cause.Turns?.ToWire(),
    };
}
