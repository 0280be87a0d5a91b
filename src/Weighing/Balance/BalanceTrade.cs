using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.Balance;

/// <summary>
/// The loads that meet one goal, and what the other goals are then. Perches move load along one pattern only, so four loads
/// meet one goal at a time; total, centre of gravity and front weight stay whatever is turned, and at equal tracks the left
/// share too. Those move with ballast, driver and fuel.
/// </summary>
/// <param name="Goal">The goal that is met.</param>
/// <param name="LoadsKg">Loads then, kg.</param>
/// <param name="CrossWeightPercent">Cross weight then, percent.</param>
/// <param name="FrontLeftRightDifferenceKg">LF minus RF then, kg.</param>
/// <param name="RearLeftRightDifferenceKg">LR minus RR then, kg.</param>
/// <param name="LeftSideWeightGapPercent">Left-side weight of the front axle minus that of the rear axle then, percent.</param>
sealed record BalanceTrade(BalanceGoal Goal, Corners LoadsKg, double CrossWeightPercent, double FrontLeftRightDifferenceKg, double RearLeftRightDifferenceKg, double LeftSideWeightGapPercent)
{
    /// <summary>Every goal in turn, from the loads as they are.</summary>
    /// <param name="loads">kg.</param>
    /// <param name="contacts">Where the tyres stand.</param>
    /// <param name="crossWeightTarget">Percent.</param>
    /// <exception cref="DiagnosticException">The target is none that a car is set to.</exception>
    public static IReadOnlyList<BalanceTrade> All(in Corners loads, Contacts contacts, double crossWeightTarget = 50)
    {
        if (crossWeightTarget is not (>= 30 and <= 70))
            throw new DiagnosticException(new Diagnostic(CarCodes.Target, $"The cross weight target is {crossWeightTarget} %.", "Give (RF + LR) / total in percent, 30 to 70."));
        var start = loads;
        return [.. Enum.GetValues<BalanceGoal>().Select(g => Meet(g, start, contacts.WarpPattern, crossWeightTarget))];
    }

    static BalanceTrade Meet(BalanceGoal goal, Corners loads, Corners warp, double crossWeightTarget)
    {
        // Each goal is a weighted sum of the loads that shall be zero; axle sums are constants here.
        var zero = goal switch
        {
            BalanceGoal.CrossWeight => Shares.CrossWeight - Corners.Same(crossWeightTarget / 100),
            BalanceGoal.EqualFrontLoads => Shares.FrontLeftRight,
            BalanceGoal.EqualRearLoads => Shares.RearLeftRight,
            _ => new(1 / (loads.LF + loads.RF), 0, -1 / (loads.LR + loads.RR), 0),
        };
        var met = loads - zero.Dot(loads) / zero.Dot(warp) * warp;
        return new(goal, met, Shares.Percent(Shares.CrossWeight, met), Shares.FrontLeftRight.Dot(met), Shares.RearLeftRight.Dot(met),
            100 * (met.LF / (met.LF + met.RF) - met.LR / (met.LR + met.RR)));
    }
}
