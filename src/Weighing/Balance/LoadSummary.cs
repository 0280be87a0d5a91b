using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.Balance;

/// <summary>
/// What four loads say together, each with the uncertainty that the covariance of the loads gives it
/// (law of propagation, GUM, JCGM 100:2008, 5.2.2).
/// </summary>
sealed record LoadSummary
{
    /// <summary>Sums up four loads.</summary>
    /// <param name="loads">kg; all above zero, for a car that stands on its wheels.</param>
    /// <param name="covariance">Covariance of the loads, kg².</param>
    /// <param name="degreesOfFreedom">That go with the covariance; null for many.</param>
    /// <exception cref="DiagnosticException">A load is not above zero.</exception>
    public LoadSummary(in Corners loads, in CornerMatrix covariance, double? degreesOfFreedom = null)
    {
        foreach (var corner in Corners.All)
            if (!(loads[corner] > 0 && double.IsFinite(loads[corner])))
                throw new DiagnosticException(new Diagnostic(CarCodes.Loads, $"The load at {corner} is {Kg(loads[corner])}.",
                    "A wheel that carries nothing leaves no shares to speak of: lower the car, or check that pad."));
        Loads = loads;
        Covariance = covariance;
        DegreesOfFreedom = degreesOfFreedom;
        var total = loads.Sum;
        TotalKg = Sum(Corners.Same(1));
        CrossWeightPercent = Share(Shares.CrossWeight, total);
        FrontWeightPercent = Share(Shares.Front, total);
        LeftSideWeightPercent = Share(Shares.Left, total);
        FrontLeftRightDifferenceKg = Sum(Shares.FrontLeftRight);
        RearLeftRightDifferenceKg = Sum(Shares.RearLeftRight);
    }

    /// <summary>kg.</summary>
    public Corners Loads { get; }

    /// <summary>Covariance of the loads, kg².</summary>
    public CornerMatrix Covariance { get; }

    /// <summary>Null: many.</summary>
    public double? DegreesOfFreedom { get; }

    /// <summary>Sum of the loads, kg.</summary>
    public Value TotalKg { get; }

    /// <summary>(RF + LR) / total, percent.</summary>
    public Value CrossWeightPercent { get; }

    /// <summary>(LF + RF) / total, percent.</summary>
    public Value FrontWeightPercent { get; }

    /// <summary>(LF + LR) / total, percent.</summary>
    public Value LeftSideWeightPercent { get; }

    /// <summary>LF minus RF, kg: what the front pulls to one side when it brakes.</summary>
    public Value FrontLeftRightDifferenceKg { get; }

    /// <summary>LR minus RR, kg.</summary>
    public Value RearLeftRightDifferenceKg { get; }

    Value Sum(Corners weights) => new(weights.Dot(Loads), Math.Sqrt(Covariance.VarianceOf(weights)), DegreesOfFreedom);

    Value Share(Corners part, double total) => new(
        100 * part.Dot(Loads) / total, Math.Sqrt(Covariance.VarianceOf(Shares.Slope(part, Loads))), DegreesOfFreedom);
}
