using ScaleLink.Daemon.Contract;
using ScaleLink.Weighing.Balance;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Cars;

/// <summary>Cars and balances in the words of the public API.</summary>
internal static class CarMapping
{
    public static Wire.Car Car(SavedCar car, SavedCar? inBay, bool withFile)
    {
        var targets = car.Model.Targets;
        var wire = new Wire.Car
        {
            Name = car.Model.Name,
            Hash = car.Hash,
            SavedAt = car.SavedAt.ToWire(),
            Who = car.Who,
            InBay = car.Hash == inBay?.Hash && car.Model.Name == inBay.Model.Name,
            File = withFile ? car.File : "",
            TargetCrossWeightPercent = targets.CrossWeightPercent,
            TargetTolerancePercent = targets.CrossWeightTolerancePercent,
            Entry = (ulong)car.Entry,
            ClassMinimum = car.Model.Class is { } rule ? RaceMapping.Rule(rule) : null,
            Fuel = car.Model.Fuel is { } tank ? RaceMapping.Fuel(tank) : null,
        };
        wire.Drivers.AddRange(car.Model.Drivers.Select(RaceMapping.Driver));
        wire.Guesses.AddRange(car.Model.Guesses());
        return wire;
    }

    public static Wire.BalanceTrade Trade(BalanceTrade trade) => new()
    {
        Aim = trade.Goal switch
        {
            BalanceGoal.CrossWeight => Wire.BalanceAim.CrossWeight,
            BalanceGoal.EqualFrontLoads => Wire.BalanceAim.EqualFrontLoads,
            BalanceGoal.EqualRearLoads => Wire.BalanceAim.EqualRearLoads,
            BalanceGoal.EqualLeftSideWeights => Wire.BalanceAim.EqualLeftSideWeights,
            _ => Wire.BalanceAim.Unspecified,
        },
        LoadsKg = trade.LoadsKg.ToWire(),
        CrossWeightPercent = trade.CrossWeightPercent,
        FrontLeftRightDifferenceKg = trade.FrontLeftRightDifferenceKg,
        RearLeftRightDifferenceKg = trade.RearLeftRightDifferenceKg,
        LeftSideWeightGapPercent = trade.LeftSideWeightGapPercent,
    };

    public static Wire.BallastWay Way(BallastMove way, string share) => new()
    {
        Share = share,
        From = way.From ?? "",
        To = way.To ?? "",
        Kg = way.MassKg,
        Reaches = way.Reaches,
        SharePercent = way.SharePercent,
        LoadsKg = way.LoadsKg.ToWire(),
        TotalChangeKg = way.TotalChangeKg,
    };
}
