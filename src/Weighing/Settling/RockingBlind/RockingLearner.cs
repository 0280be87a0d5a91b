using MathNet.Numerics.LinearAlgebra;

namespace ScaleLink.Weighing.Settling.RockingBlind;

/// <summary>
/// Learns the blind direction from bounces of the very car: the direction of the four loads in which rocking does not show. Every
/// bounce adds its second moments about the loads at rest, so a hard bounce weighs more than a faint one.
/// </summary>
/// <remarks>For a person's bounce: hands clear of wheels and perches, and nobody under the car.</remarks>
sealed class RockingLearner
{
    // Above this many times the noise the least-moving direction moves too: friction, or wheels that leave the pads.
    const double NoiseFloor = 2;

    // Dampers that do not quite follow the springs leak a little of a hard bounce: this share of the weakest rocking power is borne.
    const double Leakage = .005;

    // The three rocking directions must stand this far above the noise to fix the fourth.
    const double WellAbove = 30;

    // Leakage and friction repeat from block to block over about half a rocking period.
    const double BlocksPerRepeat = 5;

    const int Passes = 4;

    readonly Matrix<double> _moments = Matrix<double>.Build.Dense(4, 4);
    readonly Matrix<double> _bounce = Matrix<double>.Build.Dense(4, 4);
    readonly Vector<double> _noise = Vector<double>.Build.Dense(4);
    Vector<double> _sum = Vector<double>.Build.Dense(4);
    Corners? _start;
    int _blocks;

    /// <summary>Bounces taken in.</summary>
    public int Bounces { get; private set; }

    /// <summary>Blocks taken in.</summary>
    public int Blocks { get; private set; }

    /// <summary>One more block of the present bounce, kg.</summary>
    public void Add(in Corners block)
    {
        _start ??= block;
        var off = Vector(block - _start.Value);
        off.OuterProduct(off).Add(_bounce, _bounce);
        _sum += off;
        _blocks++;
    }

    /// <summary>The bounce is over.</summary>
    /// <param name="settled">Loads at rest after it, kg.</param>
    /// <param name="noise">Standard deviation of one block at rest, kg.</param>
    public void Finish(in Corners settled, in Corners noise)
    {
        if (_start is { } start && _blocks > 0)
        {
            var rest = Vector(settled - start);
            var about = _bounce - _sum.OuterProduct(rest) - rest.OuterProduct(_sum) + _blocks * rest.OuterProduct(rest);
            _moments.Add(about, _moments);
            _noise.Add(_blocks * Vector(noise.Times(noise)), _noise);
            Blocks += _blocks;
            Bounces++;
        }
        Drop();
    }

    /// <summary>Leaves the present bounce out, as when something else was changed meanwhile.</summary>
    public void Drop()
    {
        _bounce.Clear();
        _sum.Clear();
        (_start, _blocks) = (null, 0);
    }

    /// <summary>
    /// What has been learned, joined with what was known. Null: the bounces do not fix a direction (too faint, too few, or friction
    /// moves the warp itself); keep the prior.
    /// </summary>
    public BlindDirection? Learn(BlindDirection prior)
    {
        ArgumentNullException.ThrowIfNull(prior);
        return Blocks > 0 && FixesADirection() ? Join(prior) : null;
    }

    /// <summary>
    /// The prior and the bounces joined by uncertainty, whether or not the bounces fix a direction on their own: least squares in p,
    /// the prior as a pull towards the model, the bounces as "p times each excursion is zero within noise and leakage".
    /// </summary>
    public BlindDirection Join(BlindDirection prior)
    {
        ArgumentNullException.ThrowIfNull(prior);
        if (Blocks == 0) return prior;
        var pull = Matrix(prior.Covariance).Inverse();
        // Noise powers repeatability by the root of 2/n themselves; three such margins off, so that noise alone teaches nothing.
        var excursions = _moments - Matrix<double>.Build.DenseOfDiagonalVector(_noise * (1 + 3 * Math.Sqrt(2.0 / Blocks)));
        var p = Vector(prior.Direction);
        var covariance = Matrix(prior.Covariance);
        for (var pass = 0; pass < Passes; pass++)
        {
            var white = p.PointwiseMultiply(p).DotProduct(_noise) / Blocks;
            var excess = Math.Max(0, p.DotProduct(_moments * p) / Blocks - white);
            var information = Positive(excursions) / (white + BlocksPerRepeat * excess);
            covariance = (information + pull).Inverse();
            p = covariance * (pull * Vector(prior.Direction));
        }
        return prior.Learned(Loads(p), LoadMatrix.From(covariance));
    }

    /// <summary>In units of the noise: the least direction lies at it but for leakage, the other three well above.</summary>
    bool FixesADirection()
    {
        var scale = Matrix<double>.Build.DenseOfDiagonalVector(_noise.Map(v => 1 / Math.Sqrt(v)));
        var powers = (scale * _moments * scale).Evd(Symmetricity.Symmetric).EigenValues.Map(v => v.Real);
        return powers[0] <= Math.Max(NoiseFloor, Leakage * powers[1]) && powers[1] >= WellAbove;
    }

    /// <summary>Taking the noise off may leave the blind direction slightly negative: that is zero.</summary>
    static Matrix<double> Positive(Matrix<double> matrix)
    {
        var parts = matrix.Evd(Symmetricity.Symmetric);
        var powers = parts.EigenValues.Map(v => Math.Max(0, v.Real));
        return parts.EigenVectors * Matrix<double>.Build.DenseOfDiagonalVector(powers) * parts.EigenVectors.Transpose();
    }

    static Vector<double> Vector(Corners c) => Vector<double>.Build.DenseOfArray([c.LF, c.RF, c.LR, c.RR]);

    static Corners Loads(Vector<double> v) => new(v[0], v[1], v[2], v[3]);

    static Matrix<double> Matrix(LoadMatrix m) =>
        Matrix<double>.Build.DenseOfRowVectors(Vector(m.LF), Vector(m.RF), Vector(m.LR), Vector(m.RR));
}
