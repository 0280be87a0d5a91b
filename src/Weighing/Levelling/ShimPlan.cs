using ScaleLink.Weighing.Cars;

namespace ScaleLink.Weighing.Levelling;

/// <summary>Which shims to put under which pad.</summary>
/// <param name="Stacks">Thicknesses under each pad, mm, thickest first.</param>
/// <param name="HeightsAfterMm">Pad heights afterwards, relative to their mean, mm.</param>
/// <param name="SpreadMm">Highest minus lowest pad afterwards, mm.</param>
/// <param name="Levels">True when the spread is within what was asked for.</param>
/// <param name="Finding">What to do when it is not.</param>
sealed record ShimPlan(PerCorner<IReadOnlyList<double>> Stacks, Corners HeightsAfterMm, double SpreadMm, bool Levels, Diagnostic? Finding)
{
    /// <summary>Number of shims used.</summary>
    public int Pieces => Stacks.LF.Count + Stacks.RF.Count + Stacks.LR.Count + Stacks.RR.Count;

    /// <summary>Thickness of all shims together, mm.</summary>
    public double ThicknessMm => Stacks.LF.Sum() + Stacks.RF.Sum() + Stacks.LR.Sum() + Stacks.RR.Sum();
}
