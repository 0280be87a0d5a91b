using ScaleLink.Weighing.Calibration;
using ScaleLink.Weighing.Calibration.Procedure;

namespace Weighing.Tests.Calibration.Procedure;

/// <summary>No published source: each mistake is made on purpose, and must be named for what it is.</summary>
public class DiagnosisTests
{
    [Fact]
    public void Sound_calibration_procedures_raise_no_alarm()
    {
        // One in a thousand is allowed; in 80 calibration procedures none or, rarely, one.
        var alarms = Enumerable.Range(0, 80).Count(seed => Diagnosis.Of(Bench.Masses, Bench.Pad(seed).Calibrate(Bench.Stacks, Bench.TrueKg)) is not null);
        Assert.InRange(alarms, 0, 1);
    }

    [Fact]
    public void Exchanged_masses_are_named()
    {
        // The 10 and the second 50 change places: the two steps between them are 40 kg light.
        var found = Find(label => label switch { "50 B" => 10, "10 A" => 50, _ => Bench.TrueKg(label) });
        Assert.Equal("SL-310", found.Code);
        Assert.EndsWith("50 B and 10 A.", found.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mass_marked_in_pounds_is_named()
    {
        var found = Find(label => label == "10 A" ? 10 * 0.45359237 : Bench.TrueKg(label));
        Assert.Equal("SL-311", found.Code);
        Assert.Contains("10 A, listed as 10 kg, weighs about 4.5", found.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mass_that_is_simply_wrong_is_named_with_its_likely_value()
    {
        var found = Find(label => label == "50 B" ? 48.8 : Bench.TrueKg(label));
        Assert.Equal("SL-328", found.Code);
        Assert.Contains("50 B, listed as 50 kg, weighs about 48.8", found.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_with_a_hand_on_the_masses_is_named()
    {
        var points = Bench.Pad().Calibrate(Bench.Stacks, Bench.TrueKg);
        var index = points.FindIndex(p => p.Repetition == 2 && p.Way == LoadingWay.Down && p.Load == Bench.Stacks[4]);
        points[index] = points[index] with { Counts = points[index].Counts + 400 * 0.8 };
        var found = Diagnosis.Of(Bench.Masses, points)!;
        Assert.Equal("SL-309", found.Code);
        Assert.Contains("repetition 2, way down, 20 A + 50 A + 50 B + 10 A", found.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_whole_set_in_pounds_shows_against_the_calibration_before()
    {
        var report = CalibrationEvaluation.Evaluate(Bench.Input(Bench.Pad().Calibrate(Bench.Stacks, label => 0.45359237 * Bench.TrueKg(label))));
        Assert.Contains(report.Refusals, r => r.Code == "SL-311" && r.Message.ToString().Contains("all masses", StringComparison.Ordinal));
    }

    static Diagnostic Find(Func<string, double> trueKg) =>
        Diagnosis.Of(Bench.Masses, Bench.Pad().Calibrate(Bench.Stacks, trueKg)) ?? throw new InvalidOperationException("Nothing was found.");
}
