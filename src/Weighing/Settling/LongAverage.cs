using ScaleLink.Weighing.Settling.Noise;

namespace ScaleLink.Weighing.Settling;

/// <summary>
/// Plain mean of five seconds whose standard error counts how far the blocks repeat each other, and how far the newest second lies
/// off. Slow and wide, but it holds for any motion without a trend.
/// </summary>
sealed class LongAverage : ILoadClaim
{
    readonly double[] _deviations = new double[4 * Length];
    LoadMatrix _repeatability;
    double _perMean;
    Corners _step;

    /// <summary>Blocks needed.</summary>
    public const int Length = 100;

    /// <inheritdoc/>
    public Corners Loads { get; private set; }

    /// <inheritdoc/>
    public Corners StandardUncertainty { get; private set; }

    /// <inheritdoc/>
    public double VarianceOf(in Corners weights) =>
        _perMean * _repeatability.VarianceOf(weights) + _step.Dot(weights) * _step.Dot(weights);

    public void Update(BlockHistory history)
    {
        Loads = history.Mean(Length);
        var inflation = 1.0;
        foreach (var corner in Corners.All)
        {
            var blocks = history.Newest(corner, Length);
            var mean = Loads[corner];
            for (var i = 0; i < Length; i++) _deviations[(int)corner * Length + i] = blocks[i] - mean;
            inflation = Math.Max(inflation, Autocorrelation.VarianceInflation(blocks));
        }
        _repeatability = LoadMatrix.SecondMoments(_deviations, Length);
        _perMean = inflation / Length;
        _step = history.Mean(FixedAverages.NewestSecond) - Loads;
        StandardUncertainty = this.PadByPad();
    }
}
