using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.InclinometerZeros;
using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.Levelling;

/// <summary>Takes tilt of the pads, slope and warp of the patch out of four loads, one by one, or refuses and says why.</summary>
sealed class PatchCorrector
{
    readonly CarStatics statics;
    readonly MeasuredHeights heightMeasurement;
    readonly CorrectionLimits limits;
    readonly LoadCorrection slope, warp;
    readonly CornerMatrix slopeSpread, warpSpread;

    /// <summary>Prepares the corrections for one car on one patch; they do not depend on the loads of the moment.</summary>
    public PatchCorrector(CarStatics statics, MeasuredHeights heightMeasurement, CorrectionLimits? limits = null)
    {
        this.statics = statics;
        this.heightMeasurement = heightMeasurement;
        this.limits = limits ?? new();
        (slope, slopeSpread) = Prepare(CorrectionKind.Slope, car => h => car.FromSlope(h), SlopeRefusal());
        (warp, warpSpread) = Prepare(CorrectionKind.Warp, car => h => car.FromWarp(h), WarpRefusal());
    }

    /// <summary>Corrects one reading.</summary>
    /// <param name="loads">Loads along the axis of each pad, kg.</param>
    /// <param name="padTiltsDeg">Angle between each pad's axis and the vertical, degrees; null where a pad has no inclinometer or the zero of it is unknown.</param>
    /// <param name="tiltUncertaintyDeg">One standard uncertainty of a tilt, degrees; null where no inclinometer was tested.</param>
    /// <param name="off">Corrections that are switched off: sized, but not added.</param>
    public CorrectedLoads Correct(in Corners loads, Corners? padTiltsDeg = null, double? tiltUncertaintyDeg = null, params IReadOnlyList<CorrectionKind> off)
    {
        var tilt = Tilt(loads, padTiltsDeg, tiltUncertaintyDeg ?? InclinometerZero.UntestedDeg);
        List<LoadCorrection> corrections = [];
        var (corrected, spread) = (loads, default(CornerMatrix));
        foreach (var (correction, covariance) in ((LoadCorrection, CornerMatrix)[])
            [(tilt, CornerMatrix.Diagonal(tilt.StandardUncertaintyKg.Map(u => u * u))), (slope, slopeSpread), (warp, warpSpread)])
        {
            var applied = correction.SizeKg is not null && !off.Contains(correction.Kind);
            corrections.Add(correction with { Applied = applied });
            if (!applied)
                continue;
            corrected += correction.SizeKg!.Value;
            spread += covariance;
        }
        return new(corrected, spread, corrections);
    }

    LoadCorrection Tilt(Corners loads, Corners? tilts, double uncertainty)
    {
        if (tilts is not { } angles)
            return new(CorrectionKind.Tilt, null, default, false, null);
        foreach (var corner in Corners.All)
            if (!(Math.Abs(angles[corner]) <= Math.Min(limits.PadTiltDeg, TiltCorrection.LimitDegrees)))
                return new(CorrectionKind.Tilt, null, default, false, new(PatchCodes.TiltBeyondLimit,
                    $"The {corner} pad is tilted by {angles[corner]:F2} degrees; the correction is good to {limits.PadTiltDeg} degrees.", "Level that pad: shims or feet."));
        return new(CorrectionKind.Tilt,
            Corners.From(c => TiltCorrection.Size(loads[c], angles[c], 0) ?? 0),
            Corners.From(c => TiltCorrection.Uncertainty(loads[c], angles[c], 0, uncertainty)), false, null);
    }

    // The correction is minus the effect.
    (LoadCorrection, CornerMatrix) Prepare(CorrectionKind kind, Func<CarStatics, Func<Corners, Corners>> effect, Diagnostic? refusal)
    {
        if (refusal is not null)
            return (new(kind, null, default, false, refusal), default);
        var (loads, spread) = HeightEffect.Of(statics, heightMeasurement, effect);
        return (new(kind, -1 * loads, spread.DiagonalPart.Map(v => Math.Sqrt(Math.Max(0, v))), false, null), spread);
    }

    Diagnostic? SlopeRefusal()
    {
        var shape = heightMeasurement.ShapeUnder(statics.Contacts);
        var (noseUp, leftUp) = (shape.NoseUpDeg.Estimate, shape.LeftUpDeg.Estimate);
        if (Math.Max(Math.Abs(noseUp), Math.Abs(leftUp)) > limits.SlopeDeg)
            return new(PatchCodes.SlopeBeyondLimit, $"The patch slopes by {noseUp:F2} degrees nose up and {leftUp:F2} degrees left up; the correction is good to {limits.SlopeDeg}.",
                "Level the pads with shims first.");
        return statics.Car.CgHeightMm.Assumed
            ? new(PatchCodes.CgHeightUnknown, "Nobody stated the height of the centre of gravity, so the slope cannot be corrected.", "Measure it by lifting an axle, or level the pads.")
            : null;
    }

    Diagnostic? WarpRefusal()
    {
        var warpMm = heightMeasurement.ShapeUnder(statics.Contacts).WarpMm.Estimate;
        if (Math.Abs(warpMm) > limits.WarpMm)
            return new(PatchCodes.WarpBeyondLimit, $"The patch is warped by {Mm(warpMm):0.0}; the correction is good to {Mm(limits.WarpMm)}.", "Level the pads with shims first.");
        var guesses = NamedValues.Of(statics.Car).Where(v => v.Value.Assumed && v.Kind is not ValueKind.Height).Select(v => v.Name).ToList();
        return guesses.Count > 0
            ? new(PatchCodes.RatesUnknown, $"The warp cannot be corrected while these are guesses: {string.Join(", ", guesses)}.", "State them in the car model, or level the pads.")
            : null;
    }
}
