using CarOnPads.Bench;
using CarOnPads.Cells;
using CarOnPads.Physics;
using Daemon.Tests.Workflows.Calibration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.PadInterchange;
using ScaleLink.Measure;
using ScaleLink.Weighing.PadInterchange;

namespace Daemon.Tests.Workflows.PadInterchange;

/// <summary>
/// The pads are carried round under the simulated car and weighed through the daemon's own pipeline and ledger. The truth is how the
/// simulator makes its pads: sensitivities 0.8 % apart, entered in the bay file as if they were one; no published source.
/// </summary>
public class InterchangeEvaluationTests(ITestOutputHelper output)
{
    private const double AsIfOne = 0.000506;
    private const string Imperfect = "noise,quantisation,dead-load,offset,hysteresis,friction,scrub,run-out,clock-offset,clock-drift";

    [Fact]
    public void Known_span_errors_come_out_within_the_uncertainty_stated_and_survive_a_restart()
    {
        var within = 0;
        for (var seed = 1; seed <= 3; seed++)
        {
            using var bay = Start(seed);
            Weigh(bay, bay.TakeUpInterchange(), moved: 0);
            for (var placement = 1; placement < 4; placement++)
                // Each placement may need a restart, for a bay file that names the pads.
                Weigh(bay, bay.TakeUpInterchange(), moved: 1);
            var finished = bay.TakeUpInterchange().Finish("prover", "after the trip");
            Assert.Equal(finished.Ending!.Result!.Gains, bay.TakeUpInterchange().Newest!.Ending!.Result!.Gains);
            within += Within(bay, finished.Ending.Result);
        }

        // Of twelve at 95 %, the four of a bench bound together by their mean.
        Assert.InRange(within, 10, 12);
    }

    [Fact]
    public void What_would_spoil_it_is_refused_with_a_way_out()
    {
        using var bay = Start(5);
        var desk = bay.TakeUpInterchange();
        Assert.Equal("SL-356", Refused(() => desk.Finish("prover", "")));
        Assert.Equal("SL-563", Refused(() => desk.Record("prover")));
        Weigh(bay, desk, moved: 0);
        Assert.Equal("SL-322", Refused(() => desk.Record("prover")));
        Assert.Equal("SL-326", Refused(() => desk.Finish("prover", "")));

        Raise(bay);
        bay.Bench.MovePads(1);
        bay.Run(3);
        Lower(bay);
        Assert.Equal("SL-335", Refused(() => desk.Record("prover")));

        Raise(bay);
        bay.Zero();
        bay.Bench.Rig.Ballast([new PlacedMass(20, 0, 0, 0.2)]);
        Lower(bay);
        Assert.Equal("SL-323", Refused(() => desk.Record("prover")));

        Assert.Equal("SL-326", Refused(() => desk.ThrowAway(2, "prover")));
        Assert.Empty(desk.ThrowAway(1, "prover").Flow.Taken);
        Assert.Single(desk.Record("prover").Flow.Taken);
        Assert.Equal("lunch", desk.Abandon("prover", "lunch").Ending!.Remark);
        Assert.Equal("lunch", bay.TakeUpInterchange().Newest!.Ending!.Remark);
    }

    [Fact]
    public void A_starting_value_that_stays_at_its_corner_while_the_pad_moves_is_noticed()
    {
        using var bay = Start(6, corner => AsIfOne + 1e-6 * (int)corner);
        var desk = bay.TakeUpInterchange();
        Weigh(bay, desk, moved: 0);
        Raise(bay);
        bay.Bench.MovePads(1);
        bay.Run(3);
        bay.Zero();
        Lower(bay);
        Assert.Equal("SL-334", Refused(() => desk.Record("prover")));
    }

    private static CalibrationBay Start(int seed, Func<Corner, double?>? kgPerCount = null)
    {
        var bay = new CalibrationBay(new BayOptions { Seed = seed, Hertz = 80, Raised = true, Imperfections = Imperfections.Parse(Imperfect) },
            weighs: true, kgPerCount ?? (_ => AsIfOne));
        bay.Run(3);
        bay.Zero();
        return bay;
    }

    private static void Weigh(CalibrationBay bay, InterchangeDesk desk, int moved)
    {
        if (moved > 0)
        {
            Raise(bay);
            bay.Bench.MovePads(moved);
            bay.Run(3);
            bay.Zero();
        }

        Lower(bay);
        desk.Record("prover");
    }

    private static void Raise(CalibrationBay bay) => bay.Run(bay.Bench.Rig.Jack(Enum.GetValues<Wheel>(), Rig.ClearHeight) - bay.Bench.Time + 2);

    private static void Lower(CalibrationBay bay)
    {
        bay.Run(bay.Bench.Rig.Jack(Enum.GetValues<Wheel>(), null) - bay.Bench.Time);
        bay.Bench.Rig.RollThenBounce(2, 400, 2);
        bay.Run(4);
        for (var i = 0; i < 60 && !bay.IsWeighingReady; i++)
            bay.Run(0.5);
        Assert.True(bay.IsWeighingReady);
    }

    private int Within(CalibrationBay bay, InterchangeResult found)
    {
        var gains = Enum.GetValues<Wheel>().Select(bay.Bench.Pad).ToDictionary(p => p.SerialNumber, p => AsIfOne / p.KgPerCount - 1);
        var mean = gains.Values.Average();
        foreach (var gain in found.Gains)
            output.WriteLine($"{gain.Pad}: {100 * gain.Relative:+0.000;-0.000} % ±{100 * gain.Expanded(found.DegreesOfFreedom):0.000}, truth {100 * (gains[gain.Pad] - mean):+0.000;-0.000} %");
        Assert.All(found.Gains, gain => Assert.InRange(gain.Expanded(found.DegreesOfFreedom), 1e-5, 2e-3));
        return found.Gains.Count(gain => Math.Abs(gain.Relative - (gains[gain.Pad] - mean)) <= gain.Expanded(found.DegreesOfFreedom));
    }

    private static string Refused(Action act) => Assert.Throws<StepRefusedException>(act).Diagnostic.Code;
}
