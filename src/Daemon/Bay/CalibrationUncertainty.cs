using ScaleLink.Weighing.Pads;

namespace ScaleLink.Daemon.Bay;

/// <summary>What a calibration leaves uncertain about one load, as standard uncertainties in kg, apart by how it goes together with the other pads.</summary>
/// <param name="OwnKg">What concerns this pad alone and stays.</param>
/// <param name="PlacingKg">What concerns this pad alone and is another error after the next settle.</param>
/// <param name="AlikeKg">What errs alike on all pads.</param>
/// <param name="PerhapsAlikeKg">What may err alike on all pads or on each by itself.</param>
/// <param name="DegreesOfFreedom">Of all together; infinity for many.</param>
internal readonly record struct CalibrationUncertainty(double OwnKg, double PlacingKg, double AlikeKg, double PerhapsAlikeKg, double DegreesOfFreedom)
{
    /// <summary>All together, kg.</summary>
    public double Kg => Math.Sqrt(OwnKg * OwnKg + PlacingKg * PlacingKg + AlikeKg * AlikeKg + PerhapsAlikeKg * PerhapsAlikeKg);

    /// <summary>The uncertainty about a load of <paramref name="kg"/>.</summary>
    public static CalibrationUncertainty Of(PadCalibration calibration, double kg, UseConditions use)
    {
        ArgumentNullException.ThrowIfNull(calibration);
        var budget = calibration.Budget(kg, use);
        double own = 0, placing = 0, alike = 0, perhaps = 0;
        foreach (var (name, u, _) in budget.Terms)
        {
            if (ErrorSharing.MayErrAlike(name))
            {
                perhaps += u * u;
                continue;
            }

            var shared = ErrorSharing.AlikeShare(name) * u * u;
            alike += shared;
            if (ErrorSharing.DiffersByPlacing(name))
                placing += u * u - shared;
            else
                own += u * u - shared;
        }

        return new CalibrationUncertainty(Math.Sqrt(own), Math.Sqrt(placing), Math.Sqrt(alike), Math.Sqrt(perhaps), budget.DegreesOfFreedom);
    }
}
