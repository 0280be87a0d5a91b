using ScaleLink.Measure;
using ScaleLink.Weighing.Settling;
using ScaleLink.Weighing.Settling.RockingBlind;

namespace Weighing.Tests.Settling.Scenarios;

/// <summary>Cross weight of one record four ways: one-second average of the ratio, settled loads, rocking-blind, both joined.</summary>
sealed class CrossWeightTrial
{
    const int OneSecond = 20;

    readonly RockingRecord _record;
    readonly double[] _ratios;

    public CrossWeightTrial(RockingRecord record, BlindDirection direction)
    {
        _record = record;
        _ratios = [.. record.Blocks.Select(Ratio)];
        var blind = new RockingBlindCrossWeight(direction);
        var estimator = new SettlingEstimator(new() { NoiseKg = record.QuietNoise() });
        Settled = new Value?[record.Blocks.Length];
        Blind = new Value?[record.Blocks.Length];
        Joined = new Value?[record.Blocks.Length];
        for (var k = 0; k < record.Blocks.Length; k++)
        {
            var reading = estimator.Add(record.Blocks[k]);
            // The crew puts the car on record before it touches it.
            if (!blind.Referred && reading.WeighingReady && RockingRecord.Time(k) > Motion.SessionStarts - .5)
                blind.Refer(reading.Loads, reading.StandardUncertainty!.Value);
            Settled[k] = reading.CrossWeightPercent;
            Blind[k] = blind.Add(record.Blocks[k], estimator.NoiseKg);
            Joined[k] = CombinedCrossWeight.Of(Settled[k], Blind[k]);
        }
        Referred = blind.Referred;
    }

    public bool Referred { get; }

    public Value?[] Settled { get; }

    public Value?[] Blind { get; }

    public Value?[] Joined { get; }

    public double AverageError(int k) => Math.Abs(_ratios.AsSpan(k - OneSecond + 1, OneSecond).ToArray().Average() - Ratio(_record.Truth[k]));

    public double Error(Value?[] estimates, int k) => Math.Abs((estimates[k]?.Estimate ?? 0) - Ratio(_record.Truth[k]));

    public bool? Covers(Value?[] estimates, int k) =>
        estimates[k]?.StandardUncertainty is { } u ? Error(estimates, k) <= SettlingEstimator.Coverage * u : null;

    /// <summary>The model of the very car, with rates right and said to be known to 5 %.</summary>
    public static BlindDirection TrueModel(Motion motion)
    {
        var (direction, warp) = (motion.BlindDirection!.Value, motion.WarpVector!.Value);
        return BlindDirection.FromModel(Corners.From(c => direction[c] / warp[c]), Corners.Same(.05), warp);
    }

    static double Ratio(Corners loads) => 100 * (loads.RF + loads.LR) / loads.Sum;
}
