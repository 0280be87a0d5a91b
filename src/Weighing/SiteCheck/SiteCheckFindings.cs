namespace ScaleLink.Weighing.SiteCheck;

/// <summary>What the crew should know of what the watch saw, pad by pad.</summary>
static class SiteCheckFindings
{
    public static IEnumerable<Diagnostic> Of(SiteCheckQuestion asked, IReadOnlyList<PadOutcome> pads, IReadOnlyList<SizedPart> parts)
    {
        foreach (var pad in pads)
            foreach (var finding in Of(pad, asked.Pads.First(p => p.Corner == pad.Corner), asked.Limits))
                yield return finding;
        foreach (var part in parts.Where(p => p.Kind is SiteCheckPartKind.Slope or SiteCheckPartKind.Warp && Math.Abs(p.Reading?.Known ?? 0) > asked.WantedPercent / 2))
            yield return new(SiteCheckCodes.PatchUncorrected, $"A {part.Words}: it moves cross weight by {part.Reading!.Value.Known:+0.00;-0.00} %.", part.Remedy);
    }

    static IEnumerable<Diagnostic> Of(PadOutcome pad, WatchedPad watched, SiteCheckLimits limits)
    {
        foreach (var touch in pad.Touches)
        {
            yield return new(SiteCheckCodes.PadTouched, $"Something stood on {pad.Corner}, {Kg(touch.PeakKg):+0.0}, from {Clock(touch.FromSeconds)} to {Clock(touch.ToSeconds)} of the watch. It is left out.", "Keep off the pads while they are watched.");
            if (touch.ShiftKg != 0)
                yield return new(SiteCheckCodes.ZeroJumped, $"Since then the zero of {pad.Corner} stands {Kg(touch.ShiftKg):+0.00} elsewhere.", $"See that nothing lies on {pad.Corner}, that it stands firm and its cable pulls at nothing; then zero again.");
        }

        var drift = pad.DriftKgPer10Min;
        // Plainly, not by the chance that one of four noisy slopes has.
        if (Math.Abs(drift.Estimate) > Math.Max(limits.DriftKgPer10Min, drift.HalfWidth(0.999)))
            yield return new(SiteCheckCodes.ZeroDrifts, $"The zero of {pad.Corner} drifts by {BareKg(drift.Estimate):+0.00} ± {Kg(drift.HalfWidth()):0.00} in ten minutes{ByKelvin(pad)}.", $"Shade {pad.Corner}, let it warm through, and zero again before each weighing.");
        if (Math.Abs(pad.UnlikeK ?? 0) > limits.UnlikeK)
            yield return new(SiteCheckCodes.TemperatureUnlike, $"{pad.Corner} has {(pad.UnlikeK > 0 ? "warmed" : "cooled")} by {Math.Abs(pad.UnlikeK!.Value):0.0} K more than the others.", pad.UnlikeK > 0 ? $"It stands in the sun or near something hot: shade {pad.Corner} and wait." : $"Keep wind and wet off {pad.Corner} and wait.");
        else if (pad.WarmerK > limits.WarmerK)
            yield return new(SiteCheckCodes.TemperatureUnlike, $"{pad.Corner} is {pad.WarmerK:0.0} K warmer than the others.", $"It has stood in the sun: shade {pad.Corner}, so that its zero does not move when a cloud comes.");
        if (pad.TiltChangeDeg >= limits.TiltChangeDeg)
            yield return new(SiteCheckCodes.GroundMoves, $"{pad.Corner} tilted by {pad.TiltChangeDeg:0.00} degrees while it was empty; under a wheel it will sink further.", $"Put {pad.Corner} on a board or on firmer ground, measure the heights, and watch again.");
        if (Math.Abs(pad.TemperatureC - watched.CalibratedAtC ?? 0) > limits.CalibratedWithinK)
            yield return new(SiteCheckCodes.FarFromCalibration, $"{pad.Corner} is at {pad.TemperatureC:0.0} °C and was calibrated at {watched.CalibratedAtC:0.0} °C: it is taken to be good within {limits.CalibratedWithinK:0} K.", $"Calibrate {pad.Corner} near the temperature of its use, or bring it nearer: shade, shelter.");
    }

    static string Clock(double seconds) => $"{Math.Floor(seconds / 60):0}:{Math.Floor(seconds % 60):00}";

    static Sentence ByKelvin(PadOutcome pad) => pad.KgPerKelvin is { } kg ? (Sentence)$", {Kg(kg):+0.000} per kelvin" : default;
}
