using ScaleLink.Api.V1;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Weighing.Balance;
using Balance = ScaleLink.Api.V1.Balance;
using RaceCase = ScaleLink.Api.V1.RaceCase;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Client.Cars;

/// <summary>The balance of the car in the bay as lines.</summary>
internal static class BalancePage
{
    private const int MostWays = 6;

    public static IEnumerable<string> Lines(Balance balance, Glyphs glyphs)
    {
        var now = balance.Figures;
        yield return $"Now: total {Shown.Kg(now.TotalKg, glyphs).Full(glyphs)}, cross weight (RF + LR) / total {Percent(now.CrossWeightPercent)} %, front weight {Percent(now.FrontWeightPercent)} %, left-side weight {Percent(now.LeftSideWeightPercent)} %";
        yield return $"Centre of gravity {Length(balance.CgBehindFrontAxleMm)} {glyphs.LengthSign()} behind the front axle, {Length(balance.CgLeftOfCentreMm)} {glyphs.LengthSign()} left of the centreline: perches cannot move it, nor the front weight; ballast, driver and fuel can.";
        yield return "What perches can be asked for, one aim at a time:";
        foreach (var trade in balance.Trades)
            yield return TradeLine.Of(glyphs, Words(trade.Aim), trade.CrossWeightPercent, trade.FrontLeftRightDifferenceKg, trade.RearLeftRightDifferenceKg, trade.LeftSideWeightGapPercent);
        foreach (var way in balance.Ballast.Take(MostWays))
            yield return TradeLine.Ballast(glyphs, way.Kg, way.From, way.To, way.SharePercent, way.Reaches);
        foreach (var line in RaceTable.Lines(glyphs, [.. balance.Cases.Select(Row)]))
            yield return line;
        if (balance.ClassStanding is { } c)
            yield return RaceTable.Standing(glyphs, c.Lightest, Shown.Kg(c.LightestKg, glyphs).Bare(glyphs), c.OverKg, c.MinimumKg, c.MissingKg, c.SpareKg);
        yield return Weighing.Balance.Cautions.NotForTrade;

        string Percent(MeasuredValue quantity) => Shown.Percent(quantity).Bare(glyphs);

        string Length(MeasuredValue quantity) => Shown.Mm(quantity, glyphs).Bare(glyphs);

        RaceRow Row(RaceCase state) => new(
            RaceTable.Name(Level(state.Fuel), state.Driver), Shown.Kg(state.Figures.TotalKg, glyphs).Bare(glyphs), Percent(state.Figures.FrontWeightPercent), Percent(state.Figures.LeftSideWeightPercent),
            Percent(state.Figures.CrossWeightPercent), goal => state.Trades.First(t => t.Aim == Aim(goal)).CrossWeightPercent);
    }

    private static string Words(BalanceAim aim) => aim switch
    {
        BalanceAim.CrossWeight => "cross weight",
        BalanceAim.EqualFrontLoads => "equal front loads",
        BalanceAim.EqualRearLoads => "equal rear loads",
        BalanceAim.EqualLeftSideWeights => "equal left-side weights",
        _ => "another aim",
    };

    private static BalanceAim Aim(BalanceGoal goal) => goal switch
    {
        BalanceGoal.EqualFrontLoads => BalanceAim.EqualFrontLoads,
        BalanceGoal.EqualRearLoads => BalanceAim.EqualRearLoads,
        BalanceGoal.EqualLeftSideWeights => BalanceAim.EqualLeftSideWeights,
        _ => BalanceAim.CrossWeight,
    };

    private static Weighing.Cars.FuelLevel Level(Wire.FuelLevel level) => level switch
    {
        Wire.FuelLevel.Start => Weighing.Cars.FuelLevel.Start,
        Wire.FuelLevel.Finish => Weighing.Cars.FuelLevel.Finish,
        Wire.FuelLevel.Empty => Weighing.Cars.FuelLevel.Empty,
        _ => Weighing.Cars.FuelLevel.AsWeighed,
    };
}
