namespace ScaleLink.Weighing.Settling;

/// <summary>
/// Averages of 0.8, 0.6 and 0.4 s, one after the other: a fixed filter that stops everything above about 1.1 Hz and assumes nothing
/// about the motion. Its uncertainty is the repeatability of its own output over the last two seconds, with a margin, and how far the newest
/// second lies off.
/// </summary>
sealed class CascadeAverage : ILoadClaim
{
    const int Outputs = 40;
    const double Margin = 1.5;

    static readonly double[] Weights = Fold(Fold(Box(16), Box(12)), Box(8));

    readonly double[] _outputs = new double[4 * Outputs];
    LoadMatrix _repeatability;
    Corners _step;

    /// <summary>Blocks needed.</summary>
    public static int Length => Weights.Length + Outputs - 1;

    /// <inheritdoc/>
    public Corners Loads { get; private set; }

    /// <inheritdoc/>
    public Corners StandardUncertainty { get; private set; }

    /// <inheritdoc/>
    public double VarianceOf(in Corners weights) =>
        Margin * Margin * _repeatability.VarianceOf(weights) + _step.Dot(weights) * _step.Dot(weights);

    public void Update(BlockHistory history)
    {
        foreach (var corner in Corners.All)
        {
            var blocks = history.Newest(corner, Length);
            var outputs = _outputs.AsSpan((int)corner * Outputs, Outputs);
            var mean = 0.0;
            for (var j = 0; j < Outputs; j++)
            {
                var sum = 0.0;
                for (var i = 0; i < Weights.Length; i++) sum += Weights[i] * blocks[i + j];
                outputs[j] = sum;
                mean += sum / Outputs;
            }
            Loads = Loads.With(corner, outputs[^1]);
            for (var j = 0; j < Outputs; j++) outputs[j] -= mean;
        }
        _repeatability = LoadMatrix.SecondMoments(_outputs, Outputs);
        _step = history.Mean(FixedAverages.NewestSecond) - Loads;
        StandardUncertainty = this.PadByPad();
    }

    static double[] Box(int length)
    {
        var box = new double[length];
        Array.Fill(box, 1.0 / length);
        return box;
    }

    static double[] Fold(double[] a, double[] b)
    {
        var folded = new double[a.Length + b.Length - 1];
        for (var i = 0; i < a.Length; i++)
            for (var j = 0; j < b.Length; j++) folded[i + j] += a[i] * b[j];
        return folded;
    }
}
