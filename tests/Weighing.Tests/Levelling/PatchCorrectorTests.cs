using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Levelling;
using ScaleLink.Weighing.Statics;
using Weighing.Tests.Cars;
using Weighing.Tests.Statics;

namespace Weighing.Tests.Levelling;

public class PatchCorrectorTests
{
    static readonly CarStatics Statics = new(Heron.Car, Heron.TotalKg);

    static PatchCorrector On(Corners heights, CarModel? car = null) =>
        new(car is null ? Statics : new CarStatics(car, Heron.TotalKg), MeasuredHeights.FromHeights(heights, Corners.Same(0.1)));

    [Fact]
    public void A_car_on_a_bad_patch_reads_as_on_a_level_one()
    {
        // Least energy, not the product's equations, says what the pads read.
        var random = new Random(7701);
        for (var i = 0; i < 50; i++)
        {
            var car = RandomCars.Next(random, bars: false);
            var heights = Corners.From(_ => 8 * random.NextDouble() - 4);
            var tilts = Corners.From(_ => 2 * random.NextDouble());
            var read = car.Rest(heights).Loads is var l ? Corners.From(c => l[c] * Math.Cos(tilts[c] * Math.PI / 180)) : default;

            var corrected = new PatchCorrector(new CarStatics(RandomCars.ModelOf(car), car.TotalKg), MeasuredHeights.FromHeights(heights, Corners.Same(0.1))).Correct(read, tilts);

            Assert.All(corrected.Corrections, c => Assert.True(c.Applied));
            foreach (var corner in Corners.All)
                Assert.Equal(car.Rest().Loads[corner], corrected.LoadsKg[corner], 0.15);
        }
    }

    [Fact]
    public void Each_correction_has_its_size_and_can_be_switched_off()
    {
        var corrector = On(new(3, -1, 0, 2));

        var all = corrector.Correct(Heron.Loads, Corners.Same(1));
        var noWarp = corrector.Correct(Heron.Loads, Corners.Same(1), off: CorrectionKind.Warp);

        Assert.Equal([CorrectionKind.Tilt, CorrectionKind.Slope, CorrectionKind.Warp], all.Corrections.Select(c => c.Kind));
        var sizes = all.Corrections.Aggregate(default(Corners), (sum, c) => sum + c.SizeKg!.Value);
        Assert.Equal(Heron.Loads.LF + sizes.LF, all.LoadsKg.LF, 1e-9);
        Assert.False(noWarp.Corrections[2].Applied);
        Assert.Equal(all.LoadsKg.RF - all.Corrections[2].SizeKg!.Value.RF, noWarp.LoadsKg.RF, 1e-9);
        Assert.True(noWarp.CorrectionCovariance.RF.RF < all.CorrectionCovariance.RF.RF);
        // tests/reference/gravity-normal.json carries the cosine: 1 degree hides 0.0152 % of the load.
        Assert.Equal(Heron.Loads.LF * 1.523e-4, all.Corrections[0].SizeKg!.Value.LF, 1e-4);
        Assert.All(all.Corrections, c => Assert.True(c.StandardUncertaintyKg.LF > 0));
    }

    [Fact]
    public void Without_inclinometers_nothing_is_added_and_nothing_marked()
    {
        var corrected = On(default).Correct(Heron.Loads);

        Assert.Null(corrected.Corrections[0].SizeKg);
        Assert.False(corrected.Marked);
        Assert.Equal(Heron.Loads.LF, corrected.LoadsKg.LF, 1e-9);
    }

    [Fact]
    public void Beyond_the_limits_or_on_guesses_it_is_refused_and_the_reading_marked()
    {
        Assert.Equal(PatchCodes.TiltBeyondLimit, Refusal(On(default).Correct(Heron.Loads, new(0, 3.5, 0, 0)), 0));
        Assert.Equal(PatchCodes.SlopeBeyondLimit, Refusal(On(new(30, 30, -30, -30)).Correct(Heron.Loads), 1));
        Assert.Equal(PatchCodes.WarpBeyondLimit, Refusal(On(new(6, -6, -6, 6)).Correct(Heron.Loads), 2));
        Assert.Equal(PatchCodes.CgHeightUnknown, Refusal(On(new(1, 0, 0, 0), Heron.Car with { CgHeightMm = Stated.Guess(400, 80) }).Correct(Heron.Loads), 1));
        var guess = Heron.Car.Change(Corner.RR, s => s with { TyreRateNPerMm = Stated.Guess(200, 80) });
        var warp = On(new(1, 0, 0, 0), guess).Correct(Heron.Loads);
        Assert.Equal(PatchCodes.RatesUnknown, Refusal(warp, 2));
        Assert.Contains("RR tyre rate", warp.Corrections[2].Refusal?.Message);
    }

    [Fact]
    public void What_remains_of_a_patch_is_told_in_kg_and_percent()
    {
        var effect = PatchEffect.Of(Statics, new(2, 0, 0, 0));

        Assert.Equal(effect.CrossWeightKg / Heron.TotalKg * 100, effect.CrossWeightPercent, 1e-9);
        Assert.Equal(effect.FrontKg / Heron.TotalKg * 100, effect.FrontWeightPercent, 1e-9);
        Assert.True(effect.LoadsKg.LF > 0 && effect.CrossWeightPercent < 0);
        Assert.True(Math.Abs(effect.FrontKg) < Math.Abs(effect.CrossWeightKg));
    }

    static string? Refusal(CorrectedLoads corrected, int index)
    {
        Assert.True(corrected.Marked);
        Assert.False(corrected.Corrections[index].Applied);
        Assert.Null(corrected.Corrections[index].SizeKg);
        return corrected.Corrections[index].Refusal?.Code;
    }
}
