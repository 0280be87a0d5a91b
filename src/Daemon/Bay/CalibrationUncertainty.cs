using ScaleLink.Weighing.Pads;

namespace ScaleLink.Daemon.Bay;

/// <summary>What a calibration leaves uncertain about one load, kg.</summary>
/// <param name="OwnKg">One standard uncertainty of what concerns this pad alone.</param>
/// <param name="MassesKg">One standard uncertainty by the known masses, which other pads may share.</param>
/// <param name="DegreesOfFreedom">Of both together; infinity for many.</param>
internal readonly record struct CalibrationUncertainty(double OwnKg, double MassesKg, double DegreesOfFreedom)
{
    /// <summary>Both together, kg.</summary>
    public double Kg => double.Hypot(OwnKg, MassesKg);

    /// <summary>The uncertainty about a load of <paramref name="kg"/>.</summary>
    public static CalibrationUncertainty Of(PadCalibration calibration, double kg, UseConditions use)
    {
        ArgumentNullException.ThrowIfNull(calibration);
        var budget = calibration.Budget(kg, use);
        double Sum(bool masses) => Math.Sqrt(budget.Terms
            .Where(t => (t.Name is BudgetTerms.Masses or BudgetTerms.Buoyancy) == masses)
            .Sum(t => t.StandardUncertainty * t.StandardUncertainty));
        return new CalibrationUncertainty(Sum(masses: false), Sum(masses: true), budget.DegreesOfFreedom);
    }
}
