using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.Levelling;

/// <summary>
/// A patch that is not flat, corrected on the live loads. The truth is the same simulated car on a flat patch: physics of its own.
/// </summary>
[Trait("needs", "bay")]
public class LivePatchTests
{
    [Fact]
    public void A_measured_warp_is_taken_out_of_the_live_loads_and_can_be_switched_off()
    {
        using var bay = new BayRig("none");
        new CrewAtWork(bay).ChooseHeron();
        bay.PutCarOn();
        var flat = bay.Settled();
        bay.Simulator.DoAndWait("""{"do":"pad-height","corner":"LF","mm":3}""");
        bay.Simulator.DoAndWait("""{"do":"settle","seconds":1.5}""");
        var raised = bay.Settled();
        var effect = raised.CrossWeightPercent.Estimate - flat.CrossWeightPercent.Estimate;
        Assert.InRange(effect, -3, -0.5);

        var heightMeasurement = new HeightMeasurement { Note = "laser" };
        heightMeasurement.Heights.AddRange(raised.Corners.Select(c => new PadHeight { Corner = c.Corner, Mm = c.Corner == Corner.Lf ? 3 : 0, StandardUncertaintyMm = 0.1 }));
        var report = bay.Daemon.PatchControl.SaveHeightMeasurement(new SaveHeightMeasurementRequest { HeightMeasurement = heightMeasurement, Who = "test crew" });
        // Three quarters of a millimetre of warp at each corner: the rest is slope.
        Assert.InRange(report.Shape.WarpMm.Estimate, 0.7, 0.8);
        Assert.InRange(report.Effect.CrossWeightPercent, 1.15 * effect, 0.85 * effect);
        Switch(bay, on: true);
        Wait.Until(() => bay.Daemon.Loads()!.Corners[0].Corrections.Count(c => c.Name is "warp" or "slope") == 2, Wait.Patience, "corrected");
        var corrected = bay.Daemon.Loads()!;
        Assert.InRange(corrected.CrossWeightPercent.Estimate - flat.CrossWeightPercent.Estimate, 0.15 * effect, -0.15 * effect);
        Assert.All(corrected.Corners, c => Assert.Contains(c.Budget, p => p.Name == "patch"));
        Switch(bay, on: false);
        Wait.Until(() => Math.Abs(bay.Daemon.Loads()!.CrossWeightPercent.Estimate - raised.CrossWeightPercent.Estimate) < 0.02, Wait.Patience, "as read");
    }

    private static void Switch(BayRig bay, bool on)
    {
        foreach (var name in new[] { "warp", "slope" })
            bay.Daemon.PatchControl.SetCorrection(new SetCorrectionRequest { Name = name, On = on, Who = "test crew" });
    }
}
