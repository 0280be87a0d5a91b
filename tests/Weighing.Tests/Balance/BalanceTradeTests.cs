using CsCheck;
using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Statics;
using Weighing.Tests.Cars;

namespace Weighing.Tests.Balance;

public class BalanceTradeTests
{
    static readonly Gen<Corners> GenLoads = Gen.Select(Gen.Double[200, 320], Gen.Double[200, 320], Gen.Double[200, 320], Gen.Double[200, 320], (a, b, c, d) => new Corners(a, b, c, d));

    [Fact]
    public void Equal_front_loads_make_cross_weight_equal_left_side_weight() => GenLoads.Sample(loads =>
    {
        var met = Of(BalanceGoal.EqualFrontLoads, loads, Contacts.FromAxles(2450, 1500, 1480));
        Assert.Equal(0, met.FrontLeftRightDifferenceKg, 1e-9);
        Assert.Equal(100 * (met.LoadsKg.LF + met.LoadsKg.LR) / loads.Sum, met.CrossWeightPercent, 1e-9);
    });

    [Fact]
    public void No_goal_moves_total_centre_of_gravity_or_front_weight() => GenLoads.Sample(loads =>
    {
        var contacts = Contacts.FromAxles(2450, 1520, 1440);
        foreach (var trade in BalanceTrade.All(loads, contacts))
        {
            Assert.Equal(loads.Sum, trade.LoadsKg.Sum, 1e-9);
            Assert.Equal(contacts.X.Dot(loads), contacts.X.Dot(trade.LoadsKg), 1e-6);
            Assert.Equal(contacts.Y.Dot(loads), contacts.Y.Dot(trade.LoadsKg), 1e-6);
        }
    });

    [Fact]
    public void Each_goal_is_met_and_costs_the_others()
    {
        var contacts = Contacts.FromAxles(2450, 1500, 1480);

        Assert.Equal(50.5, BalanceTrade.All(Heron.Loads, contacts, 50.5)[0].CrossWeightPercent, 1e-9);
        Assert.Equal(0, Of(BalanceGoal.EqualRearLoads, Heron.Loads, contacts).RearLeftRightDifferenceKg, 1e-9);
        var equalShares = Of(BalanceGoal.EqualLeftSideWeights, Heron.Loads, contacts);
        Assert.Equal(0, equalShares.LeftSideWeightGapPercent, 1e-9);
        Assert.NotEqual(0, equalShares.FrontLeftRightDifferenceKg, 0.1);
        Assert.Equal(4, BalanceTrade.All(Heron.Loads, contacts).Count);
    }

    static BalanceTrade Of(BalanceGoal goal, Corners loads, Contacts contacts) => BalanceTrade.All(loads, contacts).Single(t => t.Goal == goal);
}
