using System.Globalization;
using ScaleLink.Weighing.InclinometerZeros;
using ScaleLink.Weighing.Pads;

namespace ScaleLink.Weighing.SiteCheck;

/// <summary>What the four pads themselves bring: tilt, temperature, calibration, and the ground under each.</summary>
static class PadParts
{
    const double MostWarmingK = 15;

    public static IEnumerable<SizedPart> Of(SiteCheckQuestion asked, IReadOnlyList<PadOutcome> outcomes, Corners slope)
    {
        var pads = asked.Pads.ToDictionary(p => p.Corner);
        var found = outcomes.ToDictionary(p => p.Corner);
        yield return Tilt(asked, pads, found, slope);
        yield return Temperature(asked, pads, found, slope);
        yield return Calibration(pads, slope);
        yield return Ground(asked, found, slope);
    }

    static SizedPart Tilt(SiteCheckQuestion asked, Dictionary<Corner, WatchedPad> pads, Dictionary<Corner, PadOutcome> found, Corners slope)
    {
        var known = Corners.From(c => pads[c].TiltIsCorrected ? 0 : Tilt(found[c]) is { } tilt ? slope[c] * asked.LoadsKg[c] * (Math.Cos(tilt) - 1) : 0);
        var uncertainty = Corners.From(c => slope[c] * (found[c] is { PitchDeg: { } pitch, RollDeg: { } roll }
            ? TiltCorrection.Uncertainty(asked.LoadsKg[c], pitch, roll, pads[c].TiltUncertaintyDeg)
            : asked.LoadsKg[c] * Statistics.TypeB.Rectangular(1 - Math.Cos(double.DegreesToRadians(asked.Limits.UnseenTiltDeg)))));
        var size = new PartSize(known.Sum, Math.Sqrt(uncertainty.Dot(uncertainty)));
        var tilts = outcomesWithTilt().ToList();
        var worst = tilts.Count > 0 ? tilts.MaxBy(p => Tilt(p)!.Value) : null;
        var words = worst is null
            ? string.Create(CultureInfo.InvariantCulture, $"the tilt of the pads not known, taken as up to {asked.Limits.UnseenTiltDeg:0.#}°")
            : string.Create(CultureInfo.InvariantCulture, $"{worst.Corner} tilts most, {double.RadiansToDegrees(Tilt(worst)!.Value):0.00}°");
        List<Corner> untested = [.. tilts.Select(p => p.Corner).Where(c => pads[c].TiltUncertaintyDeg >= InclinometerZero.UntestedDeg)];
        return new(SiteCheckPartKind.Tilt, worst?.Corner, size, default(PartSize),
            words + (untested.Count > 0 ? $"; zero of the inclinometer not tested: {string.Join(", ", untested)}" : ""),
            $"Level {(worst is null ? "each pad" : worst.Corner)} on its board{(untested.Count > 0 ? ", and test the zero of its inclinometer: scalelink patch inclinometer-zero" : "")}.");

        IEnumerable<PadOutcome> outcomesWithTilt() => found.Values.Where(p => Tilt(p) is not null);
    }

    static SizedPart Temperature(SiteCheckQuestion asked, Dictionary<Corner, WatchedPad> pads, Dictionary<Corner, PadOutcome> found, Corners slope)
    {
        var away = Corners.From(c => found[c].TemperatureC - pads[c].CalibratedAtC is { } k ? Math.Abs(k) : asked.Limits.CalibratedWithinK);
        var minutes = asked.Pads.Max(p => p.Moments[^1].Seconds - p.Moments[0].Seconds) / 60;
        var ahead = Corners.From(c => Math.Min(MostWarmingK, Math.Abs(found[c].WarmedK ?? 0) / minutes * 60));
        var worst = Worst(slope, away);
        var words = found[worst].TemperatureC - pads[worst].CalibratedAtC is { } kelvin
            ? string.Create(CultureInfo.InvariantCulture, $"{worst} is at {found[worst].TemperatureC:0.0} °C, {kelvin:+0.0;-0.0;0.0} K from its calibration procedure")
            : string.Create(CultureInfo.InvariantCulture, $"temperature of pad or calibration procedure not known, taken as {asked.Limits.CalibratedWithinK:0} K apart");
        return new(SiteCheckPartKind.Temperature, worst, new PartSize(0, Size(away)), new PartSize(0, Size(ahead)), words,
            "Shade the pads and let them come to the temperature of the place; or calibrate them at it.");

        double Size(Corners kelvin)
        {
            var each = Corners.From(c => slope[c] * asked.LoadsKg[c] * Statistics.TypeB.Rectangular((pads[c].SpanPerKelvin ?? asked.Limits.SpanPerKelvin) * kelvin[c]));
            return Math.Sqrt(each.Dot(each));
        }
    }

    static SizedPart Calibration(Dictionary<Corner, WatchedPad> pads, Corners slope)
    {
        var each = Corners.From(c => slope[c] * pads[c].CalibrationKg);
        var worst = Worst(slope, Corners.From(c => pads[c].CalibrationKg));
        List<Corner> nominalOnly = [.. Corners.All.ToArray().Where(c => !pads[c].IsCalibrated)];
        Sentence words = $"{worst} is good to ± {Kg(2 * pads[worst].CalibrationKg):0.00} at the load expected{(nominalOnly.Count > 0 ? $"; not calibrated: {string.Join(", ", nominalOnly)}" : "")}";
        // The same pads read both: what is left of a wrong span is a thousandth of a small change.
        return new(SiteCheckPartKind.Calibration, worst, new PartSize(0, Math.Sqrt(each.Dot(each))), default(PartSize), words,
            nominalOnly.Count > 0 ? $"Calibrate {string.Join(", ", nominalOnly)} with known masses." : "Calibrate the pads with better masses, or with more of them.");
    }

    // A pad that tilts sinks in its middle too: by no more than its tilt times the way from its edge.
    static SizedPart Ground(SiteCheckQuestion asked, Dictionary<Corner, PadOutcome> found, Corners slope)
    {
        var sunk = Corners.From(c => Math.Abs(found[c].TiltChangeDeg ?? 0) >= asked.Limits.TiltChangeDeg
            ? asked.Limits.LeverMm * Math.Tan(double.DegreesToRadians(found[c].TiltChangeDeg!.Value)) : 0);
        var worst = Worst(Corners.Same(1), sunk);
        var unseen = Corners.All.ToArray().Count(c => found[c].TiltChangeDeg is null);
        if (sunk.Sum == 0)
            return new(SiteCheckPartKind.Ground, null, default(PartSize), default(PartSize),
                unseen == 0 ? "no pad tilted while it was empty" : $"{unseen} of the pads cannot tell whether they tilt", "Put the pads on boards; look at their tilts again with the car on.");
        PartSize? size = asked.Car is { } car ? new PartSize(0, Math.Sqrt(Corners.From(c => Math.Pow(slope.Dot(car.FromPads(default(Corners).With(c, Statistics.TypeB.Rectangular(sunk[c])))), 2)).Sum)) : null;
        return new(SiteCheckPartKind.Ground, worst, size, size,
            string.Create(CultureInfo.InvariantCulture, $"{worst} tilted by {found[worst].TiltChangeDeg:0.00}°"), $"Put {worst} on a board, or on firmer ground, and measure the heights again.");
    }

    static double? Tilt(PadOutcome pad) => pad is { PitchDeg: { } pitch, RollDeg: { } roll }
        ? Math.Atan(double.Hypot(Math.Tan(double.DegreesToRadians(pitch)), Math.Tan(double.DegreesToRadians(roll)))) : null;

    static Corner Worst(Corners slope, Corners sizes) => Corners.All.ToArray().MaxBy(c => Math.Abs(slope[c] * sizes[c]));
}
