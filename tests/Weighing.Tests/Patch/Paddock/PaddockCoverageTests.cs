using ScaleLink.Measure;
using ScaleLink.Weighing.Patch;
using ScaleLink.Weighing.Patch.Paddock;
using ScaleLink.Weighing.Statics;
using Weighing.Tests.Statics;

namespace Weighing.Tests.Patch.Paddock;

/// <summary>
/// Two hundred random paddocks: a car at rest by least energy, sloping and warped ground, sun by an exponential on cells with coefficients of
/// their own, a survey with errors, wrong spans. What the watch claims has to hold for the cross weight that is read there afterwards.
/// </summary>
public class PaddockCoverageTests(ITestOutputHelper output)
{
    [Fact]
    public void The_stated_interval_covers_the_truth_in_nine_of_ten_paddocks()
    {
        var random = new Random(5811);
        var (reading, change, used) = (0, 0, 0.0);
        const int Paddocks = 200;
        for (var i = 0; i < Paddocks; i++)
        {
            var paddock = new RandomPaddock(random, corrects: i % 2 == 0);
            var report = PaddockJudge.Judge(paddock.Asked);
            reading += Math.Abs(paddock.ReadingError(report.ZeroEveryMinutes)) <= report.ReadingPercent ? 1 : 0;
            change += Math.Abs(paddock.ChangeError(report.ZeroEveryMinutes)) <= report.ChangePercent ? 1 : 0;
            used += Math.Abs(paddock.ReadingError(report.ZeroEveryMinutes)) / report.ReadingPercent!.Value / Paddocks;
        }

        output.WriteLine($"covered: reading {reading}, change {change} of {Paddocks}; a reading is off by {used:P0} of its interval on average");
        Assert.InRange(reading, 0.9 * Paddocks, Paddocks);
        Assert.InRange(change, 0.9 * Paddocks, Paddocks);
        // An interval that is never used up is no statement either.
        Assert.InRange(used, 0.1, 0.9);
    }

    sealed class RandomPaddock
    {
        const double LagSeconds = 600, WatchSeconds = 600, NoiseKg = 0.015;
        readonly EnergyCar car;
        readonly Corners heights, spans, gains, kelvin, level, sloping;
        readonly CarStatics statics;
        readonly PatchSurvey survey;
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
            survey = PatchSurvey.FromHeights(measured, Corners.Same(0.3));
            statics = new(RandomCars.ModelOf(car), car.TotalKg);
            spans = Corners.From(_ => 2e-4 * Watched.Normal(random));
            // Zero coefficients up to the worst of four cells, and sun on one pad: some come out of the shade just now, some have stood there.
            gains = Corners.From(_ => U(-0.02, 0.02));
            kelvin = default(Corners).With((Corner)random.Next(4), U(2, 20)) + Corners.Same(U(-3, 3));
            var pads = Corners.All.ToArray().Select(c => Watched.Pad(c, random, t => ZeroAt(c, t), NoiseKg, (int)WatchSeconds, t => 20 + WarmedAt(c, t), _ => 0)
                with { CalibrationKg = 2e-4 * level[c], SpanPerKelvin = 1e-6 });
            Asked = new([.. pads], Corners.Same(car.TotalKg / 4)) { Car = statics, Survey = survey, On = corrects ? [CorrectionKind.Slope, CorrectionKind.Warp] : [] };
        }

        public PaddockQuestion Asked { get; }

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
            return corrects ? new PatchCorrector(statics, survey).Correct(read).LoadsKg : read;
        }

        double WarmedAt(Corner c, double t) => kelvin[c] * (1 - Math.Exp(-t / LagSeconds));

        double ZeroAt(Corner c, double t) => gains[c] * WarmedAt(c, t);

        double U(double low, double high) => low + (high - low) * random.NextDouble();

        static double CrossWeight(Corners loads) => 100 * (loads.RF + loads.LR) / loads.Sum;
    }
}
