using Shared.Rig;

namespace Bay.Tests;

/// <summary>
/// Published loads against the simulator's truth, which comes from physics of its own.
/// Source of the limits: the project's own requirement; the truth is derived (static equilibrium), no published source.
/// </summary>
[Trait("needs", "bay")]
public class AgreementTests
{
    [Fact]
    public void Without_noise_and_friction_the_loads_are_the_truth_within_50_g()
    {
        using var bay = new BayRig("none");
        bay.PutCarOn();
        Compare(bay, 0.05);
        bay.Simulator.DoAndWait("""{"do":"turn","corner":"LF","turns":1}""");
        Compare(bay, 0.05);
    }

    [Fact]
    public void With_noise_and_quantisation_the_settled_loads_are_the_truth_within_200_g()
    {
        using var bay = new BayRig("noise,quantisation,dead-load,offset,clock-offset,clock-drift,latency-batches");
        bay.PutCarOn();
        Compare(bay, 0.2);
    }

    private static void Compare(BayRig bay, double limit)
    {
        var loads = bay.Settled();
        var truth = bay.Simulator.TrueLoads();
        var read = loads.Corners.Select(c => c.LoadKg.Estimate).ToArray();
        for (var i = 0; i < 4; i++)
            Assert.InRange(read[i] - truth[i], -limit, limit);
        Assert.InRange(loads.TotalKg.Estimate - truth.Sum(), -2 * limit, 2 * limit);
        // The worst that four errors of the limit can do to (RF + LR) / total.
        var crossLimit = 100 * 2 * limit / truth.Sum();
        Assert.InRange(loads.CrossWeightPercent.Estimate - 100 * (truth[1] + truth[2]) / truth.Sum(), -crossLimit, crossLimit);
        Assert.All(loads.Corners, c => Assert.False(c.Calibrated));
    }
}
