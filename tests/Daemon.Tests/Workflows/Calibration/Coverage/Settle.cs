using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;

namespace Daemon.Tests.Workflows.Calibration.Coverage;

/// <summary>One settle of a car: what the faces were told, what would go on record, and the truth.</summary>
internal sealed record Settle(IReadOnlyList<StatedFigure> Figures, RecordedWeighing Recorded, LoadSummary Truth)
{
    private const int Looks = 10;
    private const double LookSeconds = 0.05, LongestSeconds = 60;

    /// <summary>Rolls and bounces the car and waits until the daemon takes it for the record.</summary>
    public static Settle Take(CalibrationBay bay)
    {
        bay.Bench.Rig.RollThenBounce(2, 400, 2);
        bay.Run(5);
        for (var waited = 0.0; waited < LongestSeconds && !bay.IsWeighingReady; waited += 0.5)
            bay.Run(0.5);
        Assert.True(bay.IsWeighingReady);
        var sum = default(Corners);
        for (var i = 0; i < Looks; i++)
        {
            bay.Run(LookSeconds);
            var now = bay.Bench.Loads;
            sum += Corners.From(c => now[(int)c]);
        }

        var truth = new LoadSummary(1.0 / Looks * sum, default);
        var reading = bay.Newest!;
        StatedFigure Of(string name, Value? stated, double true_) => new(name, stated!.Value.Estimate - true_, stated.Value.HalfWidth());
        return new(
            [
                .. reading.Corners.Select(c => Of($"load {c.Corner}", c.LoadKg, truth.Loads[c.Corner])),
                Of("total", reading.TotalKg, truth.TotalKg.Estimate),
                Of("front weight", reading.FrontWeightPercent, truth.FrontWeightPercent.Estimate),
                Of("left-side weight", reading.LeftSideWeightPercent, truth.LeftSideWeightPercent.Estimate),
                Of("cross weight", reading.CrossWeightPercent, truth.CrossWeightPercent.Estimate),
            ],
            bay.Record(), truth);
    }

    /// <summary>The change of cross weight as the two weighings on record state it.</summary>
    public StatedFigure ChangeSince(Settle before)
    {
        var (now, then) = (Recorded.ForSteps.CrossWeightPercent, before.Recorded.ForSteps.CrossWeightPercent);
        var change = new Value(now.Estimate - then.Estimate, double.Hypot(now.Uncertainty, then.Uncertainty));
        return new("change of cross weight", change.Estimate - (Truth.CrossWeightPercent.Estimate - before.Truth.CrossWeightPercent.Estimate), change.HalfWidth());
    }
}
