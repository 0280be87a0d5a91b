using ScaleLink.Weighing.Calibration.Fitting;
using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Calibration.Results;
using ScaleLink.Weighing.Pads;

namespace ScaleLink.Weighing.Calibration.Flow;

/// <summary>One reading of a calibration procedure, held against what is known so far.</summary>
/// <param name="Taken">The reading and its step.</param>
/// <param name="Number">Number of the step, from 1.</param>
/// <param name="Counts">Trimmed counts, added up.</param>
/// <param name="ReadKg">Load above the empty pad before the repetition or preload, by the calibration before; null before the first.</param>
/// <param name="LoadKg">What stood on the pad, kg; null where it holds ballast that no curve has found yet.</param>
/// <param name="ResidualKg">Known mass minus the curve through the repetitions so far; null without a curve and outside the repetitions.</param>
sealed record ProgressPoint(TakenReading Taken, int Number, double Counts, double? ReadKg, double? LoadKg, double? ResidualKg);

/// <summary>What a calibration procedure shows while it is still being read.</summary>
static class ProcedureProgress
{
    /// <summary>Every reading, in the order taken.</summary>
    public static IReadOnlyList<ProgressPoint> Of(ProcedureFlow flow)
    {
        ArgumentNullException.ThrowIfNull(flow);
        var pad = TrimmedOrBefore(flow);
        var scale = FoundSensitivity.Of(flow.Plan, flow.Readings);
        var numbers = ProcedureScript.Of(flow.Plan).Index().ToDictionary(step => step.Item, step => step.Index + 1);
        var curve = Curve(flow, pad);
        var residuals = new Queue<double>(curve?.ResidualsKg ?? []);
        List<ProgressPoint> points = [];
        double? empty = null;
        foreach (var taken in flow.Readings)
        {
            var counts = pad.Counts([.. taken.Reading.CellCounts]);
            if (taken.Step.Load.IsEmpty && (taken.Step.Way == LoadingWay.Up || empty is null))
                empty = counts;
            points.Add(new ProgressPoint(taken, numbers[taken.Step], counts,
                empty is { } zero ? scale?.Kg(counts - zero) : null,
                Mass(flow.Plan.Masses, taken.Step.Load, curve),
                taken.Step.Stage == ProcedureStage.Repetitions && residuals.TryDequeue(out var residual) ? residual : null));
        }
        return points;
    }

    static double? Mass(MassSet masses, LoadStack load, CurveFit? curve) =>
        load.Ballast.Count == 0 ? masses.Kg(load)
        : curve is not null && load.Ballast.All(label => curve.Ballast.Any(b => b.Label == label)) ? Characterisation.Kg(masses, load, curve)
        : null;

    static PadCalibration TrimmedOrBefore(ProcedureFlow flow)
    {
        try
        {
            return ProcedureAssembly.Trimmed(flow);
        }
        catch (RefusedException)
        {
            // The corner-load test is not yet complete, or not good: the report will say so.
            return flow.Plan.Before;
        }
    }

    static CurveFit? Curve(ProcedureFlow flow, PadCalibration pad)
    {
        try
        {
            return CurveFitter.Fit(flow.Plan.Masses, ProcedureAssembly.Points(flow, pad));
        }
        catch (RefusedException)
        {
            return null;
        }
    }
}
