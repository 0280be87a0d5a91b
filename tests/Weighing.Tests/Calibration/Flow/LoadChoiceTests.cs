using ScaleLink.Weighing.Calibration.Flow;
using ScaleLink.Weighing.Calibration.Masses;

namespace Weighing.Tests.Calibration.Flow;

public class LoadChoiceTests
{
    [Fact]
    public void Few_masses_are_piled_one_by_one() =>
        Assert.Equal([20, 40, 90], Kg(Of(20, 20, 50), 600));

    [Fact]
    public void Of_many_masses_five_evenly_spread_loads_are_chosen_and_the_highest_is_the_whole_pile() =>
        Assert.Equal([100, 200, 300, 400, 500], Kg(Of([.. Enumerable.Repeat(25.0, 20)]), 600));

    [Fact]
    public void Nothing_goes_beyond_the_capacity_and_a_lighter_mass_may_still_fit() =>
        Assert.Equal([50, 70], Kg(Of(50, 50, 20), 80));

    [Fact]
    public void Nothing_comes_off_on_the_way_up()
    {
        var loads = LoadChoice.Of(Of([.. Enumerable.Repeat(20.0, 13)]), 600);
        foreach (var (lower, higher) in loads.Zip(loads.Skip(1)))
            Assert.Empty(lower.Masses.Except(higher.Masses));
    }

    static double[] Kg(MassSet masses, double capacity) => [.. LoadChoice.Of(masses, capacity).Select(masses.Kg)];

    static MassSet Of(params double[] kg) => new([.. kg.Select((k, i) => KnownMass.Stated($"{k} no. {i}", k, 0.01))]);
}
