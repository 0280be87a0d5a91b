using ScaleLink.Weighing.Cars;

namespace ScaleLink.Weighing.Balance;

/// <summary>What is measured once for all lifts.</summary>
/// <param name="WheelbaseMm">mm.</param>
/// <param name="FrontRadiusMm">Height of the front wheel centres above their pads, car level and loaded, mm.</param>
/// <param name="RearRadiusMm">The same at the rear, mm.</param>
/// <param name="FrontLoadKg">LF + RF with the car level, kg.</param>
/// <param name="RearLoadKg">LR + RR with the car level, kg.</param>
sealed record AxleLiftSetup(Stated WheelbaseMm, Stated FrontRadiusMm, Stated RearRadiusMm, Value FrontLoadKg, Value RearLoadKg)
{
    /// <summary>Total, kg.</summary>
    public double TotalKg => FrontLoadKg.Estimate + RearLoadKg.Estimate;

    /// <summary>Wheel radius of an axle, mm.</summary>
    public Stated RadiusOf(Axle axle) => axle == Axle.Front ? FrontRadiusMm : RearRadiusMm;

    /// <summary>Level load of an axle, kg.</summary>
    public Value LoadOf(Axle axle) => axle == Axle.Front ? FrontLoadKg : RearLoadKg;
}
