using ScaleLink.Weighing.Settling;
using ScaleLink.Weighing.Settling.RockingBlind;

namespace Weighing.Tests.Settling.Scenarios;

/// <summary>Several bounces of one car teach the learner; the next one is read with what it learned.</summary>
static class Bounces
{
    const double LearnFor = 4;

    /// <param name="kind">The car.</param>
    /// <param name="seed">Names the series together with <paramref name="number"/>.</param>
    /// <param name="number">Which car.</param>
    /// <param name="count">Bounces to learn from.</param>
    /// <returns>The record after them, the learner, and the bare contacts' prior.</returns>
    public static (RockingRecord Next, RockingLearner Learner) Of(SpringCarKind kind, int seed, int number, int count)
    {
        var draw = new Draw(seed * 100_003 + number);
        var motions = SpringCarRun.Series(draw, kind, count + 1);
        var learner = new RockingLearner();
        foreach (var motion in motions[..^1])
        {
            var record = Instrument.Read(motion, draw);
            var estimator = new SettlingEstimator(new() { NoiseKg = record.QuietNoise() });
            for (var k = 0; k < record.Blocks.Length; k++)
            {
                var reading = estimator.Add(record.Blocks[k]);
                var t = RockingRecord.Time(k);
                if (t is > 0 and < LearnFor) learner.Add(record.Blocks[k]);
                if (t <= LearnFor || !reading.WeighingReady) continue;
                learner.Finish(reading.Loads, record.QuietNoise());
                break;
            }
            learner.Drop();
        }
        return (Instrument.Read(motions[^1], draw), learner);
    }
}
