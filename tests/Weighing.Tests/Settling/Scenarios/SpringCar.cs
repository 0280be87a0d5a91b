using ScaleLink.Measure;

namespace Weighing.Tests.Settling.Scenarios;

/// <summary>
/// The parts of a car with seven degrees of freedom: sprung body on four springs, dampers, anti-roll bars and tyres, with friction
/// in each corner. The ranges are assumptions, none is published.
/// </summary>
sealed class SpringCar
{
    public const double Gravity = 9.81;

    public SpringCar(Draw draw, Standing standing, SpringCarKind kind)
    {
        double wheelbase = draw.Uniform(2.3, 2.7), track = draw.Uniform(1.4, 1.6);
        double unsprungFront = draw.Uniform(28, 42), unsprungRear = draw.Uniform(28, 42);
        Mass = standing.Total - 2 * (unsprungFront + unsprungRear);
        // The body's own centre of gravity: what is left when the wheels are taken away.
        var front = (standing.Total * standing.FrontWeight - 2 * unsprungFront) / Mass;
        var left = (standing.Total * standing.LeftSideWeight - unsprungFront - unsprungRear) / Mass;
        PitchInertia = Mass * draw.Uniform(.8, 1.1) * wheelbase * wheelbase * front * (1 - front);
        RollInertia = Mass * Math.Pow(draw.Uniform(.33, .42) * track, 2);
        double hz = draw.Uniform(1.4, 2.8), rearRatio = draw.Uniform(kind.RearToFront.Low, kind.RearToFront.High), z = draw.LogUniform(.05, .30);
        double asymmetry = draw.Uniform(1, 2.5), friction = draw.LogUniform(5, 80), stuck = draw.Uniform(1e5, 4e5);
        double tyre = draw.Uniform(1.8e5, 2.6e5), tyreDamping = draw.Uniform(300, 600);
        double[] bar = [draw.Uniform(0, .6), draw.Uniform(0, .6)];
        if (kind.Damping is { } fixedDamping) z = fixedDamping(draw);
        for (var pad = 0; pad < 4; pad++)
        {
            var isFront = pad < 2;
            X[pad] = wheelbase * (isFront ? 1 - front : -front);
            Y[pad] = track * (pad % 2 == 0 ? 1 - left : -left);
            Unsprung[pad] = isFront ? unsprungFront : unsprungRear;
            var carried = Mass * (isFront ? front : 1 - front) / 2;
            Spring[pad] = Math.Pow(2 * Math.PI * hz * (isFront ? 1 : rearRatio), 2) * carried;
            Bar[pad] = bar[isFront ? 0 : 1] * Spring[pad];
            Spring[pad] *= kind.SpringSpread(draw);
            var damper = kind.DamperSpread(draw)
                * (kind.Thrown ? z / (Math.PI * hz) * Spring[pad] : 2 * z * Math.Sqrt(Spring[pad] * carried));
            var ratio = kind.Asymmetric ? asymmetry : 1;
            Bump[pad] = 2 * damper / (1 + ratio);
            Rebound[pad] = ratio * Bump[pad];
            FrictionLimit[pad] = kind.Friction ? friction * draw.Uniform(.7, 1.3) : 0;
            StuckRate[pad] = stuck;
            StuckLoss[pad] = 2 * .03 * Math.Sqrt(stuck * carried);
            Tyre[pad] = tyre;
            TyreDamping[pad] = tyreDamping;
        }
        Wheelbase = wheelbase;
        Track = track;
    }

    public double Mass { get; }
    public double PitchInertia { get; }
    public double RollInertia { get; }
    public double Wheelbase { get; }
    public double Track { get; }
    public double[] X { get; } = new double[4];
    public double[] Y { get; } = new double[4];
    public double[] Unsprung { get; } = new double[4];
    public double[] Spring { get; } = new double[4];
    public double[] Bar { get; } = new double[4];
    public double[] Bump { get; } = new double[4];
    public double[] Rebound { get; } = new double[4];
    public double[] FrictionLimit { get; } = new double[4];
    public double[] StuckRate { get; } = new double[4];
    public double[] StuckLoss { get; } = new double[4];
    public double[] Tyre { get; } = new double[4];
    public double[] TyreDamping { get; } = new double[4];

    /// <summary>Null vector of (1, x, y) over the contacts of a rectangle.</summary>
    public static Corners WarpVector => new(1, -1, -1, 1);

    /// <summary>Compliance at the wheels times the warp vector, m/N: spring and bar, in series with the tyre.</summary>
    public Corners BlindDirection => Corners.From(corner =>
    {
        // Left and right of an axle are coupled by the bar: [k + b, -b; -b, k' + b] inverted, times the pair's warp.
        int pad = (int)corner, other = pad ^ 1;
        double own = Spring[pad] + Bar[pad], across = Spring[other] + Bar[pad];
        var gap = (across * Motion.Warp[pad] + Bar[pad] * Motion.Warp[other]) / (own * across - Bar[pad] * Bar[pad]);
        return gap + Motion.Warp[pad] / Tyre[pad];
    });

    /// <summary>Ride rate of each corner, N/m, spring in series with tyre.</summary>
    public Corners RideRates => Corners.From(corner => 1 / (1 / Spring[(int)corner] + 1 / Tyre[(int)corner]));
}
