using CarOnPads.Bench;
using CarOnPads.Cells;
using Daemon.Tests.Workflows.Calibration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Measure;
using ScaleLink.Weighing.Calibration.Flow;
using ScaleLink.Weighing.Calibration.Masses;

namespace Daemon.Tests.Bay;

/// <summary>No published source: samples from before a disturbance must not be in a reading.</summary>
public class PadObservationTests
{
    [Theory]
    [InlineData(80, 100, 0.14, -0.14)]
    [InlineData(10, 100, 0.14, -0.14)]
    [InlineData(80, 101.5, 0, 0)]
    public void A_load_that_was_moved_or_exchanged_rests_when_the_window_holds_nothing_from_before(double hertz, double kg, double x, double y)
    {
        using var bay = new CalibrationBay(new BayOptions { Seed = 4, Hertz = hertz, Raised = true, Imperfections = Imperfections.Parse("noise,quantisation") });
        bay.Run(3);
        bay.Put(100);
        bay.Run(1);
        Assert.All(bay.Pads, p => Assert.True(p.Observe()!.Rest.Settled));
        foreach (var wheel in Enum.GetValues<CarOnPads.Physics.Wheel>())
            bay.Bench.PutMass(wheel, kg, x, y, atOnce: true);
        for (var beat = 0; beat < 6; beat++)
        {
            bay.Run(0.3);
            Assert.All(bay.Pads, p => Assert.False(p.Observe()!.Rest.Settled));
        }

        bay.Run(0.5);
        Assert.Contains(bay.Pads, p => p.Observe()!.Rest.Settled);
    }

    [Fact]
    public void A_point_that_was_taken_back_is_not_taken_again_from_the_same_samples()
    {
        using var bay = new CalibrationBay(new BayOptions { Seed = 4, Hertz = 80, Raised = true, Imperfections = Imperfections.Parse("noise,quantisation") });
        bay.Run(3);
        bay.Zero();
        var set = new MassSet([.. Enumerable.Range(1, 4).Select(i => KnownMass.OfClass($"50 no. {i}", 50, WeightClass.M1))]);
        bay.Desk.Start(new ProcedurePlan
        {
            Before = bay.Pads[0].Standing.Calibration!, Corner = Corner.LF, Masses = set, Place = CalibrationBay.Here, Preloads = 0,
            Loads = [LoadStack.Of("50 no. 1"), LoadStack.Of([.. set.Masses.Select(m => m.Label)])],
        }, "prover");
        bay.Desk.Record(Corner.LF, 1, "prover");
        bay.Desk.Repeat(Corner.LF, repetition: null, "prover");
        bay.Run(1.5);
        Assert.Equal(CalibrationCodes.Unsettled, Assert.Throws<StepRefusedException>(() => bay.Desk.Record(Corner.LF, 1, "prover")).Diagnostic.Code);
        bay.Run(0.6);
        bay.Desk.Record(Corner.LF, 1, "prover");
    }
}
