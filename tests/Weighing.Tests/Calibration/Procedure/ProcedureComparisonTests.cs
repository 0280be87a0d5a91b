using ScaleLink.Weighing.Calibration.Procedure;
using ScaleLink.Weighing.Pads;

namespace Weighing.Tests.Calibration.Procedure;

/// <summary>No published source: pads that shifted by a known amount between two calibration procedures.</summary>
public class ProcedureComparisonTests
{
    [Fact]
    public void Two_calibration_procedures_of_a_sound_pad_show_no_shift()
    {
        var shifts = Enumerable.Range(1, 20).SelectMany(seed => Compare(seed, _ => { })).ToList();
        // 95 % intervals, but those of the budget are wide on purpose.
        Assert.InRange(shifts.Count, 0, 2);
    }

    [Fact]
    public void A_changed_span_is_noticed_and_named()
    {
        var shift = Assert.Single(Compare(1, pad => pad.CountsPerKg *= 0.998));
        Assert.Equal("span", shift.What);
        Assert.Equal(200 * 0.002, shift.Kg, 0.05);
        Assert.Equal("SL-327", shift.Finding.Code);
    }

    [Fact]
    public void A_jump_of_the_zero_is_noticed_and_named()
    {
        var shift = Assert.Single(Compare(1, pad => pad.ZeroCounts += 400 * 4));
        Assert.Equal(("zero", 4.0), (shift.What, Math.Round(shift.Kg, 1)));
    }

    [Fact]
    public void A_small_walk_of_the_zero_is_none_of_its_business() => Assert.Empty(Compare(1, pad => pad.ZeroCounts += 400));

    [Fact]
    public void A_new_bow_is_noticed_and_named() => Assert.Contains(Compare(1, pad => pad.BowKg = 1.5), s => s.What == "shape");

    [Fact]
    public void Another_place_is_no_shift()
    {
        var before = Bench.Calibrated(Bench.Pad());
        var hills = Place.On("hills", 30, 2000);
        var there = Bench.Pad(2);
        there.Sensitivity = hills.GravityMps2 / Bench.Shop.GravityMps2;
        var now = CalibrationEvaluation.Evaluate(Bench.Input(there.Calibrate(Bench.Stacks, Bench.TrueKg)) with { Place = hills }).Calibration!;
        Assert.Empty(ProcedureComparison.Of(before, now, sameMasses: true));
        // As a count of kilograms the two differ by gravity: half a kilogram in 200.
        Assert.Equal(0.5, now.Kg(80_000) - before.Kg(80_000), 0.05);
    }

    static IReadOnlyList<ProcedureShift> Compare(int seed, Action<Coverage.SimulatedPad> change)
    {
        var before = Bench.Calibrated(Bench.Pad(seed));
        var pad = Bench.Pad(1000 + seed);
        change(pad);
        return ProcedureComparison.Of(before, Bench.Calibrated(pad), sameMasses: true);
    }
}
