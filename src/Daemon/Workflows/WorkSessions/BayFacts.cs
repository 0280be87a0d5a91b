using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Workflows.Levelling;
using ScaleLink.Daemon.Workflows.WorkSessions.Checks;
using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Levelling;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>What the bay sees of the preparation for itself.</summary>
/// <param name="Seen">One for each check that it can judge.</param>
internal sealed record BayFacts(IReadOnlyList<SeenCheck> Seen)
{
    // A zero wanders with temperature: one of yesterday is none. Common practice, no published source.
    private static readonly TimeSpan OldestZero = TimeSpan.FromHours(12);

    // What this much does to cross weight lies within the repeatability of settling. Common practice, no published source.
    private const double LevelWarpMm = 0.5;
    private const double LevelSlopeDeg = 0.1;

    /// <summary>Looks at pads, newest reading and patch.</summary>
    public static BayFacts Of(IReadOnlyList<PadSnapshot> pads, BayReading? reading, PatchState patch, CarModel car, (DateTimeOffset Utc, long Ns) now)
    {
        ArgumentNullException.ThrowIfNull(pads);
        ArgumentNullException.ThrowIfNull(patch);
        return new([Zeroed(pads, now), Calibrated(pads, reading), Level(pads, patch, car)]);
    }

    private static SeenCheck Zeroed(IReadOnlyList<PadSnapshot> pads, (DateTimeOffset Utc, long Ns) now)
    {
        var without = pads.Where(p => p.Zero is null || Age(p.Zero, now) > OldestZero).Select(p => p.Corner.ToString()).ToList();
        return new("pads_zeroed", without.Count == 0 && pads.Count == 4,
            without.Count == 0 && pads.Count > 0 ? $"oldest zero {LocalTime.Minute(pads.Min(p => p.Zero!.TakenAt))}" : "",
            without.Count == 0 ? [] : [new(SessionCodes.ZeroMissing, $"No zero within {OldestZero.TotalHours:0} hours: {string.Join(", ", without)}.", "Empty the pads and zero them.")]);
    }

    // A wall clock that was put forward makes no zero older.
    private static TimeSpan Age(ZeroPoint zero, (DateTimeOffset Utc, long Ns) now) =>
        zero.TakenNs is { } taken ? TimeSpan.FromTicks((now.Ns - taken) / TimeSpan.NanosecondsPerTick) : now.Utc - zero.TakenAt;

    // Of a pad that is away nobody can say now whether it is calibrated: it is named as away, not as never calibrated.
    private static SeenCheck Calibrated(IReadOnlyList<PadSnapshot> pads, BayReading? reading)
    {
        var away = pads.Where(p => p.Identity is null).ToList();
        var not = reading?.Corners.Where(c => !c.Calibrated && away.All(p => p.Corner != c.Corner)).Select(c => c.Corner.ToString()).ToList() ?? [];
        return new("pads_proved", reading is not null && not.Count + away.Count == 0,
            reading is null || not.Count + away.Count > 0 ? "" : string.Join(", ", reading.Corners.Select(c => c.Calibration).Distinct()),
            [
                .. not.Count == 0 ? (IEnumerable<Diagnostic>)[] : [new(SessionCodes.PadsNotCalibrated, $"Not calibrated with known masses: {string.Join(", ", not)}.", "Calibrate them, or skip the check: loads are then marked nominal only.")],
                .. away.Select(p => new Diagnostic(SessionCodes.PadsNotCalibrated, $"{p.Corner} is away{(p.LastCalibration is { } last ? $"; its pad was last calibrated on {last.Time:yyyy-MM-dd} by {last.Who}" : "")}.", "Plug it in: it then says which pad it is.")),
            ]);
    }

    private static SeenCheck Level(IReadOnlyList<PadSnapshot> pads, PatchState patch, CarModel car)
    {
        var untested = InclinometerZerosUntested(pads);
        if (patch.HeightMeasurement is not { } heightMeasurement)
            return new("patch_level", false, "", [.. untested, new(SessionCodes.PatchNotLevel, "The patch was not measured.", "Measure the heights between the pads, or skip the check with the reason.")]);
        var shape = heightMeasurement.HeightMeasurement.ShapeUnder(Contacts.Of(car));
        var isWarpLevel = Math.Abs(shape.WarpMm.Estimate) <= LevelWarpMm || patch.On.Contains(CorrectionKind.Warp);
        var isSlopeLevel = Math.Max(Math.Abs(shape.NoseUpDeg.Estimate), Math.Abs(shape.LeftUpDeg.Estimate)) <= LevelSlopeDeg || patch.On.Contains(CorrectionKind.Slope);
        Sentence value = $"warp {Mm(shape.WarpMm.Estimate):0.0}, nose up {shape.NoseUpDeg.Estimate:0.00}°, left up {shape.LeftUpDeg.Estimate:0.00}°";
        return new("patch_level", isWarpLevel && isSlopeLevel, value,
            isWarpLevel && isSlopeLevel ? untested : [.. untested, new(SessionCodes.PatchNotLevel, $"The patch is not level: {value}.", "Shim the pads, or switch the corrections on.")]);
    }

    // Advice: the uncertainty is in every load already, and the check holds all the same.
    private static List<Diagnostic> InclinometerZerosUntested(IReadOnlyList<PadSnapshot> pads)
    {
        var untested = pads.Where(p => p is { Configuration.CorrectTilt: true, PitchDegrees: not null, InclinometerZero: null }).Select(p => p.Corner.ToString()).ToList();
        return untested.Count == 0 ? [] :
            [new(SessionCodes.InclinometerUntested, $"Tilt is corrected by inclinometers whose zero was never tested: {string.Join(", ", untested)}.", "Turn each pad round once: Patch on the page, or scalelink patch inclinometer-zero. Until then each load carries the uncertainty.")];
    }
}
