using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Workflows.Levelling;
using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Daemon.Workflows.WorkSessions.Checks;
using ScaleLink.Measure;
using ScaleLink.Weighing.Cars.Files;
using ScaleLink.Weighing.InclinometerZeros;
using ScaleLink.Weighing.Levelling;
using ScaleLink.Weighing.Levelling.Files;
using ScaleLink.Weighing.Pads;

namespace Daemon.Tests.Workflows.WorkSessions;

/// <summary>What preparation says of inclinometers. The project's own rule.</summary>
public class BayFactsTests
{
    private static readonly SavedInclinometerZero Tested = new(new InclinometerZero(0.1, 0, 0.01, 0, 0), DateTimeOffset.UnixEpoch, "Ada", "");

    [Fact]
    public void An_inclinometer_whose_zero_was_never_tested_is_told_and_holds_nobody_up()
    {
        var level = Level([Pad(Corner.LF, 0.2, Tested), Pad(Corner.RF, 0.2, null), Pad(Corner.LR, null, null), Pad(Corner.RR, 0.2, null, corrects: false)]);
        Assert.True(level.Holds);
        var finding = Assert.Single(level.Findings);
        Assert.Equal("SL-577", finding.Code);
        Assert.Contains("never tested: RF.", finding.Message);
        Assert.Contains("scalelink patch inclinometer-zero", finding.Remedy);
    }

    [Fact]
    public void Tested_ones_are_not_told() => Assert.Empty(Level([Pad(Corner.LF, 0.2, Tested), Pad(Corner.RF, 0.2, Tested)]).Findings);

    [Fact]
    public void A_pad_that_is_away_is_told_as_away_with_its_last_calibration_and_not_as_never_calibrated()
    {
        var known = PadCalibration.Starting("SLP-1004", 0.001, 0.01, 600, 4, new Place("trial", 9.81, 1e-6), DateTimeOffset.UnixEpoch) with { Who = "A. Prover" };
        var pads = new[] { Pad(Corner.LF, null, null), Pad(Corner.RR, null, null) with { State = PadState.Absent, LastCalibration = known } };
        var seen = BayFacts.Of(pads, null, new PatchState(null, []), CarFile.Read(Bench.CarText).Car!, (DateTimeOffset.UnixEpoch, 0)).Seen.Single(s => s.Key == "pads_proved");
        Assert.False(seen.Holds);
        Assert.Contains("RR is away; its pad was last calibrated on 1970-01-01 by A. Prover.", seen.Findings.Select(f => f.Message.ToString()));
        Assert.DoesNotContain(seen.Findings, f => f.Message.ToString().StartsWith("Not calibrated", StringComparison.Ordinal));
    }

    private static SeenCheck Level(IReadOnlyList<PadSnapshot> pads)
    {
        var flat = new SavedHeightMeasurement(new HeightMeasurementInput(), MeasuredHeights.FromHeights(default, Corners.Same(0.1)), DateTimeOffset.UnixEpoch, "Ada");
        return BayFacts.Of(pads, null, new PatchState(flat, []), CarFile.Read(Bench.CarText).Car!, (DateTimeOffset.UnixEpoch, 0)).Seen.Single(s => s.Key == "patch_level");
    }

    private static PadSnapshot Pad(Corner corner, double? pitch, SavedInclinometerZero? zero, bool corrects = true) => new()
    {
        Configuration = new PadConfiguration { Corner = corner, Source = new SourceConfiguration { Link = "/dev/pad", Baud = 9600, Protocol = ProtocolKind.PadFrames }, SpanUncertaintyPercent = 1, CorrectTilt = corrects },
        State = PadState.Live, PitchDegrees = pitch, InclinometerZero = zero, Counters = default, Faults = [],
    };
}
