using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Workflows.Cars;
using ScaleLink.Daemon.Workflows.InclinometerZeros;
using ScaleLink.Measure;
using ScaleLink.Weighing.Levelling;
using ScaleLink.Weighing.Levelling.Files;
using ScaleLink.Weighing.Statics;

using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Levelling;

/// <summary>The patch in the words of the public API.</summary>
internal sealed class PatchMapping(PatchDesk desk, StandingCar standing, AskedReader loads, LiveBay bay)
{
    private const string Limits =
        "The pads' own inclinometers show how each pad tilts. Heights between pads they cannot see: those come from a height measurement (level beam, laser, water level), and it is done again when a pad has been moved.";

    // What a car weighs where nothing has been weighed yet: only then is it a guess, and it says so.
    private const double AnyTotalKg = 1000;

    public static HeightMeasurementInput HeightMeasurement(Wire.HeightMeasurement? heightMeasurement)
    {
        if (heightMeasurement is null)
            throw ApiErrors.BadRequest(PatchCodes.InputUnusable, "height_measurement", "There is no height measurement in the request.", "Give four heights, or differences and beam readings.");
        if (heightMeasurement.Heights.Count > 0 && (heightMeasurement.Heights.Count != 4 || heightMeasurement.Heights.Select(h => h.Corner).Distinct().Count() != 4))
            throw ApiErrors.BadRequest(PatchCodes.HeightsIncomplete, "height_measurement.heights", "Heights are needed of all four pads.", "Give each of LF, RF, LR, RR once.");
        var heights = heightMeasurement.Heights.ToDictionary(h => h.Corner.ToCorner());
        return new()
        {
            HeightsMm = heights.Count > 0 ? Corners.From(c => heights[c].Mm) : null,
            HeightUncertaintiesMm = heights.Count > 0 ? Corners.From(c => heights[c].StandardUncertaintyMm) : default,
            Differences = [.. heightMeasurement.Differences.Select(d => new HeightDifference(d.From.ToCorner(), d.To.ToCorner(), d.Mm, d.StandardUncertaintyMm))],
            Beams = [.. heightMeasurement.Beams.Select(b => new BeamReading(b.From.ToCorner(), b.To.ToCorner(), b.SpanMm, b.ReadingDeg, b.ReversedDeg, b.ReadingUncertaintyDeg))],
            Note = PlainText.Clean(heightMeasurement.Note, 200),
        };
    }

    /// <summary>The patch as it is in effect.</summary>
    public Wire.PatchReport Report()
    {
        var state = desk.State;
        var report = Report(state.HeightMeasurement?.HeightMeasurement, state.On);
        if (state.HeightMeasurement is { } heightMeasurement)
            (report.MeasuredAt, report.Who, report.Note) = (heightMeasurement.At.ToWire(), heightMeasurement.Who, heightMeasurement.Input.Note);
        return report;
    }

    /// <summary>A patch with this height measurement.</summary>
    public Wire.PatchReport Report(MeasuredHeights? heightMeasurement, IReadOnlyList<CorrectionKind> on)
    {
        var report = new Wire.PatchReport { Limits = Limits };
        report.PadTilts.AddRange(bay.Pads.Select(p => Tilt(p.Snapshot())));
        var statics = Statics();
        if (heightMeasurement is not null)
            report.Shape = Shape(heightMeasurement, statics?.Contacts ?? Contacts.FromAxles(2500, 1500, 1500));
        if (heightMeasurement is not null && statics is not null)
        {
            report.Effect = Effect(PatchEffect.Of(statics, heightMeasurement.HeightsMm));
            var sizes = new PatchCorrector(statics, heightMeasurement).Correct(Corners.Same(statics.TotalKg / 4)).Corrections;
            report.Corrections.AddRange(PatchState.Kinds.Select(k => Correction(sizes.First(c => c.Kind == k), on.Contains(k))));
        }
        else
        {
            report.Corrections.AddRange(PatchState.Kinds.Select(k => new Wire.PatchCorrection { Name = CorrectedReading.NameOf(k), On = on.Contains(k) }));
        }

        report.Findings.AddRange(Findings(heightMeasurement, on).Select(WireValues.ToWire));
        return report;
    }

    public Wire.PatchEffect? EffectOf(Corners heightsMm) => Statics() is { } statics ? Effect(PatchEffect.Of(statics, heightsMm)) : null;

    /// <summary>Where the wheels of the car in the bay stand; null without a car.</summary>
    public Contacts? WheelContacts => Statics()?.Contacts;

    private CarStatics? Statics() => standing.Model is { } car ? new CarStatics(car, loads.PresentOrNone()?.Loads.Sum ?? AnyTotalKg) : null;

    private IEnumerable<Diagnostic> Findings(MeasuredHeights? heightMeasurement, IReadOnlyList<CorrectionKind> on)
    {
        if (heightMeasurement is null)
            yield return new(PatchCodes.NoHeightMeasurement, on.Count > 0 ? "Corrections are switched on, but no height measurement is in effect." : "The patch has not been measured.", "Measure the heights between the pads and enter the height measurement: Patch on the page, or scalelink patch heights FILE.");
        if (heightMeasurement is { Spare: 0 })
            yield return new(PatchCodes.NothingMeasuredTwice, "Nothing was measured twice: a wrong reading would not show.", "Measure round the patch, four differences: they close on themselves.");
        if (standing.Model is null)
            yield return new(CarCodes.NoCarInBay, "Nobody said which car stands in the bay: what the patch does to it cannot be told.", "Choose one: Car on the page, or scalelink car use FILE.");
        else if (loads.PresentOrNone() is null)
            yield return new(CarCodes.NoSettledLoads, $"The bay has no settled loads at this moment; effects are for {Kg(AnyTotalKg):0}.", "Ask again with the car settled on the pads.");
    }

    private static Wire.PatchShape Shape(MeasuredHeights heightMeasurement, Contacts contacts)
    {
        var (shape, h) = (heightMeasurement.ShapeUnder(contacts), heightMeasurement.HeightsMm);
        return new()
        {
            HeightsMm = h.ToWire(heightMeasurement.Covariance.DiagonalPart.Map(v => Math.Sqrt(Math.Max(0, v)))),
            NoseUpDeg = shape.NoseUpDeg.ToWire(),
            LeftUpDeg = shape.LeftUpDeg.ToWire(),
            WarpMm = shape.WarpMm.ToWire(),
            SpreadMm = Math.Max(Math.Max(h.LF, h.RF), Math.Max(h.LR, h.RR)) - Math.Min(Math.Min(h.LF, h.RF), Math.Min(h.LR, h.RR)),
            ClosureMm = heightMeasurement.ClosureMm,
            Spare = (uint)heightMeasurement.Spare,
        };
    }

    private static Wire.PatchEffect Effect(PatchEffect effect) => new()
    {
        LoadsKg = effect.LoadsKg.ToWire(),
        CrossWeightPercent = effect.CrossWeightPercent,
        FrontWeightPercent = effect.FrontWeightPercent,
        LeftSideWeightPercent = effect.LeftSideWeightPercent,
    };

    private static Wire.PatchCorrection Correction(LoadCorrection correction, bool isOn) => new()
    {
        Name = CorrectedReading.NameOf(correction.Kind),
        On = isOn,
        SizeKg = correction.SizeKg?.ToWire(correction.StandardUncertaintyKg),
        Refused = correction.Refusal?.ToWire(),
    };

    private static Wire.PadTilt Tilt(Bay.PadSnapshot pad)
    {
        var tilt = new Wire.PadTilt { Corner = pad.Corner.ToWire() };
        if (pad is { PitchDegrees: { } pitch, RollDegrees: { } roll })
            (tilt.PitchDeg, tilt.RollDeg) = (pitch, roll);
        if (pad.InclinometerZero is { } zero)
            tilt.Zero = InclinometerZeroMapping.Zero(zero);
        return tilt;
    }
}
