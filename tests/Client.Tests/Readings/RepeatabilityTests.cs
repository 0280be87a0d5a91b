using ScaleLink.Api.V1;
using ScaleLink.Client.Readings;

namespace Client.Tests.Readings;

public class RepeatabilityTests
{
    [Fact]
    public void Calibration_drops_out_of_a_difference()
    {
        // With all loads equal every slope is 0.05 % a kilogram: four rocking parts of 0.1 kg make 0.01 %, U 0.0196 %.
        var loads = Readouts.Settled(50, 0.5);
        loads.TotalKg.Estimate = 1000;
        foreach (var corner in loads.Corners)
            corner.Budget.Add([new UncertaintyPart { Name = "rocking", StandardUncertaintyKg = 0.1 }, new UncertaintyPart { Name = "calibration", StandardUncertaintyKg = 2.5 },
                new UncertaintyPart { Name = "masses or stated span", StandardUncertaintyKg = 2.5 }, new UncertaintyPart { Name = "alike on all pads", StandardUncertaintyKg = 2.5 }]);
        Assert.Equal(0.0196, Repeatability.OfCrossWeight(loads)!.Value, 4);
    }

    [Fact]
    public void Without_a_budget_all_of_the_uncertainty_counts() => Assert.Equal(0.5, Repeatability.OfCrossWeight(Readouts.Settled(50, 0.5))!.Value, 6);

    [Fact]
    public void Without_a_claim_there_is_none() => Assert.Null(Repeatability.OfCrossWeight(Readouts.Moving()));
}
