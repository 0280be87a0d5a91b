namespace ScaleLink.Weighing.Settling;

/// <summary>
/// A minimum-variance window together with what it may claim: noise, rocking left in its own outputs, and how well its
/// weights of six blocks ago did on the blocks that came since.
/// </summary>
/// <remarks>
/// The last part keeps the window honest. Fitted weights can grow blind to the newest blocks, because ignoring them is an easy
/// way to stay constant; old weights met with new blocks cannot hide that.
/// </remarks>
sealed class BankWindow(int length, int taps) : ILoadClaim
{
    const int Ahead = 6;

    // The white noise expected in the out-of-sample deviations, with a margin: six of them make a rough estimate.
    const double NoiseMargin = 1.5;

    const double LeastIndependence = .25;

    readonly MinimumVarianceWindow _window = new(length, taps);
    readonly double[] _pastWeights = new double[Ahead * taps];
    readonly Corners[] _pastLoads = new Corners[Ahead];
    readonly double[] _pastSquares = new double[Ahead];
    readonly double[] _deviations = new double[4 * Ahead];
    int _fits;
    LoadMatrix _outOfSample;
    double _outOfSampleNoise;
    double _rockingRatio;
    double _outOfSampleRatio;
    Corners _noise;

    /// <summary>Blocks looked at.</summary>
    public int Length => length;

    /// <summary>True once weights of six blocks ago exist to be tested.</summary>
    public bool Tested { get; private set; }

    /// <summary>Estimate of the settled loads, kg.</summary>
    public Corners Loads => _window.Loads;

    /// <summary>One standard uncertainty of each load, kg. Meaningful when <see cref="Tested"/>.</summary>
    public Corners StandardUncertainty { get; private set; }

    /// <summary>Fits to the newest blocks and tests the weights of six blocks ago on them.</summary>
    public void Update(BlockHistory history, in Corners noise)
    {
        if (history.Count < length) return;
        _noise = noise;
        _window.Fit(history, noise);
        var slot = _fits % Ahead;
        Tested = _fits >= Ahead;
        if (Tested) Test(history, slot);
        _window.Weights.CopyTo(_pastWeights.AsSpan(slot * taps, taps));
        _pastLoads[slot] = _window.Loads;
        _pastSquares[slot] = _window.SquaredWeights;
        _fits++;
        if (Tested) Judge();
    }

    public void Clear() => (_fits, Tested) = (0, false);

    /// <summary>
    /// Variance of a combination of the four loads, in the squared unit of the combination. Their errors go together, so this
    /// is not the sum over the pads; but no less than a quarter of that is claimed, since friction makes strangers of the pads late in
    /// the decay, when the window has seen them rock together.
    /// </summary>
    public double VarianceOf(in Corners weights)
    {
        var squares = StandardUncertainty.Times(weights);
        return Math.Max(JointVariance(weights), LeastIndependence * squares.Dot(squares));
    }

    double JointVariance(in Corners weights)
    {
        var white = WhiteVariance(weights, _noise);
        var motion = _window.Motion.VarianceOf(weights);
        var rocking = Math.Max(_window.Residual.VarianceOf(weights), _rockingRatio * motion);
        var outside = Math.Max(OutOfSampleVariance(weights), _outOfSampleRatio * motion);
        return _window.NoiseGain * _window.NoiseGain * white + rocking + outside;
    }

    void Test(BlockHistory history, int slot)
    {
        var weights = _pastWeights.AsSpan(slot * taps, taps);
        foreach (var corner in Corners.All)
        {
            var values = history.Newest(corner, taps + Ahead - 1);
            for (var j = 0; j < Ahead; j++)
            {
                var sum = 0.0;
                for (var i = 0; i < taps; i++) sum += weights[i] * values[i + j];
                _deviations[(int)corner * Ahead + j] = sum - _pastLoads[slot][corner];
            }
        }
        _outOfSample = LoadMatrix.SecondMoments(_deviations, Ahead);
        _outOfSampleNoise = NoiseMargin * _pastSquares[slot];
    }

    /// <summary>No pad may look luckier than the car: each gets at least the car's share of its own motion.</summary>
    void Judge()
    {
        double rocking = 0, outside = 0;
        foreach (var corner in Corners.All)
        {
            var weights = default(Corners).With(corner, 1);
            var motion = Math.Max(_window.Motion.VarianceOf(weights), 1e-12);
            rocking += _window.Residual.VarianceOf(weights) / motion;
            outside += OutOfSampleVariance(weights) / motion;
        }
        _rockingRatio = rocking / 4;
        _outOfSampleRatio = outside / 4;
        StandardUncertainty = new(
            Math.Sqrt(JointVariance(new(1, 0, 0, 0))), Math.Sqrt(JointVariance(new(0, 1, 0, 0))),
            Math.Sqrt(JointVariance(new(0, 0, 1, 0))), Math.Sqrt(JointVariance(new(0, 0, 0, 1))));
    }

    double OutOfSampleVariance(in Corners weights) =>
        Math.Max(0, _outOfSample.VarianceOf(weights) - _outOfSampleNoise * WhiteVariance(weights, _noise));

    static double WhiteVariance(in Corners weights, in Corners noise)
    {
        var scaled = weights.Times(noise);
        return scaled.Dot(scaled);
    }
}
