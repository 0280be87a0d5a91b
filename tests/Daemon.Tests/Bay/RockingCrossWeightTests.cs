using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Workflows.Cars;
using ScaleLink.Measure;
using ScaleLink.Weighing.Settling;

namespace Daemon.Tests.Bay;

/// <summary>Cross weight while the car rocks. The rocking here is three exact modes of a rigid body on four equal springs (derived, no published source).</summary>
public class RockingCrossWeightTests
{
    private const int Blocks = 20;
    private static readonly Corners Rest = new(273, 279, 266, 230);
    private static readonly CarConfiguration EqualRates = new(1500, 1500, 60, 60, 5);

    private readonly SettlingEstimator _estimator = new(new SettlingOptions());
    private readonly RockingCrossWeight _rocking = new(CarRocking.DirectionOf(EqualRates));
    private readonly Random _noise = new(3);

    [Fact]
    public void A_car_that_rocks_by_ten_kilograms_has_its_cross_weight_to_a_twentieth_of_a_percent()
    {
        Stand(Rest, 8 * Blocks);
        var truth = 100 * (Rest.RF + Rest.LR) / Rest.Sum;
        var claimed = 0;
        for (var k = 0; k < 3 * Blocks; k++)
        {
            if (Feed(Rest + Rocking(k)) is not { StandardUncertainty: { } u } cross)
                continue;
            Assert.InRange(cross.Estimate - truth, -0.05, 0.05);
            Assert.InRange(u, 0, 0.5);
            claimed++;
        }

        Assert.InRange(claimed, 2 * Blocks, 3 * Blocks);
    }

    [Fact]
    public void Another_car_is_not_taken_for_the_one_that_stood_there()
    {
        Stand(Rest, 8 * Blocks);
        var heavier = Rest + new Corners(10, 40, 10, 20);
        for (var k = 0; k < 4 * Blocks; k++)
        {
            var cross = Feed(heavier + Rocking(k));
            // The first moments are lost in the averages; after that nothing may be claimed from the old total.
            if (k > Blocks && cross is { StandardUncertainty: { } u })
                Assert.InRange(cross.Value.Estimate - 100 * (heavier.RF + heavier.LR) / heavier.Sum, -4 * u, 4 * u);
        }
    }

    [Fact]
    public void Off_the_pads_everything_is_forgotten()
    {
        Stand(Rest, 8 * Blocks);
        _estimator.Reset();
        _rocking.Interrupt();
        for (var k = 0; k < 10; k++)
            Assert.Null(Feed(Rest + Rocking(k))?.StandardUncertainty);
    }

    private void Stand(Corners loads, int blocks)
    {
        for (var k = 0; k < blocks; k++)
            Feed(loads);
    }

    private Value? Feed(Corners loads)
    {
        var block = loads + Corners.From(_ => 0.05 * (_noise.NextDouble() - 0.5));
        return _rocking.Add(block, _estimator.Add(block), _estimator.NoiseKg);
    }

    private static Corners Rocking(int k)
    {
        var t = k / (double)Blocks;
        double Mode(double hertz, double kg) => kg * Math.Exp(-0.4 * t) * Math.Cos(2 * Math.PI * hertz * t);
        return Mode(1.6, 10) * new Corners(1, 1, 1, 1) + Mode(2.1, 6) * new Corners(1, 1, -1, -1) + Mode(2.6, 5) * new Corners(1, -1, 1, -1);
    }
}
