namespace ScaleLink.Weighing.Settling;

/// <summary>
/// One set of averaging weights for all four pads, fitted anew to each stretch of blocks: of all weights with sum one, those
/// whose outputs stay most nearly constant on every pad. The rocking is common to the pads, so the weights learn to cancel it
/// without naming frequencies or damping. In pure noise they become a plain mean.
/// Minimum-variance spectral estimation (Stoica, Jakobsson, Li 1997) at frequency zero, four channels, loaded by the noise.
/// </summary>
sealed class MinimumVarianceWindow
{
    readonly double[] _scaled;
    readonly double[] _means;
    readonly double[] _weights;
    readonly double[] _outputs;
    readonly double[] _raw;
    readonly CholeskySolver _solver;

    /// <param name="length">Blocks looked at.</param>
    /// <param name="taps">Weights, at most half of the length or little more.</param>
    public MinimumVarianceWindow(int length, int taps)
    {
        (Length, Taps) = (length, taps);
        _scaled = new double[4 * length];
        _raw = new double[4 * length];
        _means = new double[4 * taps];
        _weights = new double[taps];
        _outputs = new double[4 * Snapshots];
        _solver = new CholeskySolver(taps);
    }

    public int Length { get; }

    public int Taps { get; }

    /// <summary>Places where the weights fit into the stretch.</summary>
    public int Snapshots => Length - Taps + 1;

    /// <summary>The weights, oldest block first; their sum is one.</summary>
    public ReadOnlySpan<double> Weights => _weights;

    /// <summary>Mean output on each pad, kg.</summary>
    public Corners Loads { get; private set; }

    /// <summary>Second moments of the outputs about <see cref="Loads"/>: rocking and noise that the weights could not cancel.</summary>
    public LoadMatrix Residual { get; private set; }

    /// <summary>Second moments of the blocks about their mean: the motion before any weighting.</summary>
    public LoadMatrix Motion { get; private set; }

    /// <summary>Standard deviation of <see cref="Loads"/> from white noise, as a part of the standard deviation of one block.</summary>
    public double NoiseGain { get; private set; }

    /// <summary>Sum of the squared weights.</summary>
    public double SquaredWeights { get; private set; }

    /// <summary>Fits to the newest blocks. <paramref name="noise"/>: standard deviation of a block at rest, kg.</summary>
    public void Fit(BlockHistory history, in Corners noise)
    {
        var centre = Scale(history, noise);
        FillCovariance();
        _solver.SolveOnes(_weights);
        var sum = 0.0;
        foreach (var weight in _weights) sum += weight;
        for (var i = 0; i < Taps; i++) _weights[i] /= sum;
        Output(centre, noise);
        MeasureGains();
    }

    /// <summary>Blocks less their mean, in kg and in units of the noise.</summary>
    Corners Scale(BlockHistory history, in Corners noise)
    {
        var centre = history.Mean(Length);
        foreach (var corner in Corners.All)
        {
            var values = history.Newest(corner, Length);
            var raw = _raw.AsSpan((int)corner * Length, Length);
            var scaled = _scaled.AsSpan((int)corner * Length, Length);
            double mean = centre[corner], per = 1 / noise[corner];
            for (var i = 0; i < Length; i++)
            {
                raw[i] = values[i] - mean;
                scaled[i] = raw[i] * per;
            }
        }
        Motion = LoadMatrix.SecondMoments(_raw, Length);
        return centre;
    }

    /// <summary>
    /// Covariance of the snapshots, summed over the pads, plus the identity for the noise. Each diagonal follows from its
    /// first entry by one product coming in and one going out.
    /// </summary>
    void FillCovariance()
    {
        var n = Snapshots;
        var matrix = _solver.Matrix;
        Array.Clear(matrix);
        for (var pad = 0; pad < 4; pad++)
        {
            var z = _scaled.AsSpan(pad * Length, Length);
            for (var b = 0; b < Taps; b++)
            {
                var sum = 0.0;
                for (var j = 0; j < n; j++) sum += z[j] * z[j + b];
                matrix[b * Taps] += sum;
                for (var a = 1; a + b < Taps; a++)
                {
                    sum += z[n + a - 1] * z[n + a + b - 1] - z[a - 1] * z[a + b - 1];
                    matrix[(a + b) * Taps + a] += sum;
                }
            }
            var mean = _means.AsSpan(pad * Taps, Taps);
            var running = 0.0;
            for (var j = 0; j < n; j++) running += z[j];
            for (var a = 0; a < Taps; a++)
            {
                mean[a] = running / n;
                if (a + 1 < Taps) running += z[n + a] - z[a];
            }
        }
        Centre(matrix);
    }

    void Centre(double[] matrix)
    {
        var n = Snapshots;
        var per = 1.0 / (4 * n);
        for (var a = 0; a < Taps; a++)
        {
            for (var b = 0; b <= a; b++)
            {
                var of = 0.0;
                for (var pad = 0; pad < 4; pad++) of += _means[pad * Taps + a] * _means[pad * Taps + b];
                matrix[a * Taps + b] = (matrix[a * Taps + b] - n * of) * per;
            }
            matrix[a * Taps + a] += 1;
        }
    }

    void Output(in Corners centre, in Corners noise)
    {
        Span<double> loads = stackalloc double[4];
        foreach (var corner in Corners.All)
        {
            var raw = _raw.AsSpan((int)corner * Length, Length);
            var outputs = _outputs.AsSpan((int)corner * Snapshots, Snapshots);
            var mean = 0.0;
            for (var j = 0; j < Snapshots; j++)
            {
                var sum = 0.0;
                for (var i = 0; i < Taps; i++) sum += _weights[i] * raw[i + j];
                outputs[j] = sum;
                mean += sum;
            }
            mean /= Snapshots;
            for (var j = 0; j < Snapshots; j++) outputs[j] -= mean;
            loads[(int)corner] = centre[corner] + mean;
        }
        Loads = new(loads[0], loads[1], loads[2], loads[3]);
        Residual = LoadMatrix.SecondMoments(_outputs, Snapshots);
    }

    /// <summary>The mean of the outputs is itself one long set of weights: these folded with a box over the snapshots.</summary>
    void MeasureGains()
    {
        double running = 0, folded = 0, own = 0;
        for (var i = 0; i < Length; i++)
        {
            if (i < Taps) running += _weights[i];
            if (i >= Snapshots) running -= _weights[i - Snapshots];
            folded += running * running;
        }
        foreach (var weight in _weights) own += weight * weight;
        NoiseGain = Math.Sqrt(folded) / Snapshots;
        SquaredWeights = own;
    }
}
