using ScaleLink.Measure;
using ScaleLink.Weighing.Levelling;
using ScaleLink.Weighing.SiteCheck;
using ScaleLink.Weighing.Statics;
using Weighing.Tests.Statics;

namespace Weighing.Tests.SiteCheck;

/// <summary>
/// Two hundred random paddocks: a car at rest by least energy, sloping and warped ground, sun by an exponential on cells with coefficients of
/// their own, a height measurement with errors, wrong spans. What the watch claims has to hold for the cross weight that is read there afterwards.
/// </summary>
public class SiteCheckCoverageTests(ITestOutputHelper output)
{
    [Fact]
    public void The_stated_interval_covers_the_truth_in_nine_of_ten_paddocks()
    {
        var random = new Random(5811);
        var (reading, change, used) = (0, 0, 0.0);
        const int SiteChecks = 200;
        for (var i = 0; i < SiteChecks; i++)
        {
            var siteCheck = new RandomPaddock(random, corrects: i % 2 == 0);
            var report = SiteCheckJudge.Judge(siteCheck.Asked);
            reading += Math.Abs(siteCheck.ReadingError(report.ZeroEveryMinutes)) <= report.ReadingPercent ? 1 : 0;
            change += Math.Abs(siteCheck.ChangeError(report.ZeroEveryMinutes)) <= report.ChangePercent ? 1 : 0;
            used += Math.Abs(siteCheck.ReadingError(report.ZeroEveryMinutes)) / report.ReadingPercent!.Value / SiteChecks;
        }

        output.WriteLine($"covered: reading {reading}, change {change} of {SiteChecks}; a reading is off by {used:P0} of its interval on average");
        Assert.InRange(reading, 0.9 * SiteChecks, SiteChecks);
        Assert.InRange(change, 0.9 * SiteChecks, SiteChecks);
        // An interval that is never used up is no statement either.
        Assert.InRange(used, 0.1, 0.9);
    }

    sealed class RandomPaddock
    {
        const double LagSeconds = 600, WatchSeconds = 600, NoiseKg = 0.015;
        readonly EnergyCar car;
        readonly Corners heights, spans, gains, kelvin, level, sloping;
        readonly CarStatics statics;
        readonly MeasuredHeights heightMeasurement;
        readonly bool corrects;
        readonly Random random;

        public RandomPaddock(Random random, bool corrects)
        {
            (this.random, this.corrects) = (random, corrects);
            do
            {
                car = RandomCars.Next(random, bars: false);
                level = car.Rest().Loads;
            }
            while (Corners.All.ToArray().Any(c => level[c] < 80));
            var (pitch, roll, warp) = (U(-10, 10), U(-6, 6), U(-1.5, 1.5));
            heights = new(pitch + roll + warp, pitch - roll - warp, -pitch + roll - warp, -pitch - roll + warp);
            sloping = car.Rest(heights).Loads;
            var measured = heights + Corners.From(_ => 0.3 * Watched.Normal(random));
            heightMeasurement = MeasuredHeights.FromHeights(measured, Corners.Same(0.3));
            statics = new(RandomCars.ModelOf(car), car.TotalKg);
            spans = Corners.From(_ => 2e-4 * Watched.Normal(random));
            // Zero coefficients up to the worst of four cells, and sun on one pad: some come out of the shade just now, some have stood there.
            gains = Corners.From(_ => U(-0.02, 0.02));
            kelvin = default(Corners).With((Corner)random.Next(4), U(2, 20)) + Corners.Same(U(-3, 3));
            var pads = Corners.All.ToArray().Select(c => Watched.Pad(c, random, t => ZeroAt(c, t), NoiseKg, (int)WatchSeconds, t => 20 + WarmedAt(c, t), _ => 0)
                with { CalibrationKg = 2e-4 * level[c], SpanPerKelvin = 1e-6 });
            Asked = new([.. pads], Corners.Same(car.TotalKg / 4)) { Car = statics, HeightMeasurement = heightMeasurement, On = corrects ? [CorrectionKind.Slope, CorrectionKind.Warp] : [] };
        }

        public SiteCheckQuestion Asked { get; }

        /// <summary>Read some minutes after a zero that was taken when the watch was over, less what the car is on flat ground, percent.</summary>
        public double ReadingError(double minutes) => CrossWeight(Read(sloping, WatchSeconds, WatchSeconds + 60 * minutes)) - CrossWeight(level);

        /// <summary>The same perch is turned; what is read of the change, less what it is.</summary>
        public double ChangeError(double minutes)
        {
            var turned = car.Rest(heights, new(0, 0.5, 0, 0)).Loads;
            var before = Read(sloping, WatchSeconds, WatchSeconds);
            var after = Read(turned, WatchSeconds + 600, WatchSeconds + 600 + 60 * minutes);
            return CrossWeight(after) - CrossWeight(before) - (CrossWeight(turned) - CrossWeight(sloping));
        }

        Corners Read(Corners loads, double zeroAt, double at)
        {
            var read = Corners.From(c => loads[c] * (1 + spans[c]) + ZeroAt(c, at) - ZeroAt(c, zeroAt) + NoiseKg * Watched.Normal(random));
            return corrects ? new PatchCorrector(statics, heightMeasurement).Correct(read).LoadsKg : read;
        }

        double WarmedAt(Corner c, double t) => kelvin[c] * (1 - Math.Exp(-t / LagSeconds));

        double ZeroAt(Corner c, double t) => gains[c] * WarmedAt(c, t);

        double U(double low, double high) => low + (high - low) * random.NextDouble();

        static double CrossWeight(Corners loads) => 100 * (loads.RF + loads.LR) / loads.Sum;
    }
}
