namespace Weighing.Tests.Settling.Scenarios;

/// <summary>
/// A car as five linear modes (heave, pitch, roll, warp, wheel hop) that somebody works on until t = 0. Every range is an
/// assumption about road and race cars; none is published.
/// </summary>
static class LinearCar
{
    const int WarpMode = 3;
    const int Hop = 4;
    const double Dt = 1 / Motion.SampleRate;

    static readonly (double Low, double High)[] Hz = [(1.2, 2.5), (1.3, 3.0), (1.5, 3.5), (2.0, 3.5), (9.5, 12.5)];
    static readonly (double Low, double High)[] Amplitude = [(3, 25), (2, 15), (2, 15), (.3, 3), (.2, 2)];
    static readonly double[][] Shapes = [[1, 1, 1, 1], [1, 1, -1, -1], [1, -1, 1, -1], [1, -1, -1, 1], [1, .6, .8, .5]];

    /// <summary>A quiet workshop.</summary>
    public static Motion Quiet(Draw draw) => Run(draw, workshop: false);

    /// <summary>People walk by, and friction lets go now and then after the release.</summary>
    public static Motion Workshop(Draw draw) => Run(draw, workshop: true);

    /// <summary>Something keeps shaking the car: wind through the door, an engine, a person who will not let go.</summary>
    public static Motion Shaken(Draw draw) => Run(draw, workshop: false, shaken: true);

    static Motion Run(Draw draw, bool workshop, bool shaken = false)
    {
        var motion = new Motion();
        var standing = new Standing(draw);
        var damping = draw.LogUniform(.03, .30);
        var slips = new Slips(draw, motion, workshop);
        var steps = workshop ? Footfalls.Draw(draw) : null;
        for (var pad = 0; pad < 4; pad++)
            for (var i = 0; i < Motion.Samples; i++)
                motion.AtRest[pad][i] = motion.Loads[pad][i] = standing.Before[pad] + standing.Change[pad] * standing.Done(Motion.Time(i));
        for (var mode = 0; mode < 5; mode++)
        {
            var hz = draw.Uniform(Hz[mode].Low, Hz[mode].High);
            var z = mode == Hop ? draw.Uniform(.05, .12) : Math.Clamp(damping * draw.Uniform(.7, 1.4), .03, .30);
            AddMode(draw, motion, mode, hz, z, steps, shaken);
            if (mode == WarpMode) slips.AddTo(motion, new(hz, z, Dt));
        }
        steps?.AddDirect(motion, draw);
        return motion;
    }

    static void AddMode(Draw draw, Motion motion, int mode, double hz, double damping, Footfalls? steps, bool shaken)
    {
        var force = Work(draw, mode == Hop ? .3 : 1, mode == Hop ? 0 : .7 * draw.Normal(), shaken);
        var scale = draw.LogUniform(Amplitude[mode].Low, Amplitude[mode].High) / AmplitudeAtRelease(force, hz, damping);
        var share = draw.Uniform(-1, 1);
        var state = new Oscillator(hz, damping, Dt);
        var (cos, sin) = (new double[4], new double[4]);
        for (var pad = 0; pad < 4; pad++)
        {
            var shape = Shapes[mode][pad] * (1 + .2 * draw.Normal());
            var phase = .15 * draw.Normal();
            (cos[pad], sin[pad]) = (shape * Math.Cos(phase), shape * Math.Sin(phase));
        }
        for (var i = 0; i < Motion.Samples; i++)
        {
            for (var pad = 0; pad < 4; pad++) motion.Loads[pad][i] += cos[pad] * state.Q + sin[pad] * state.P;
            state.Step(scale * force[i] + share * (steps?.Force[i] ?? 0));
        }
    }

    /// <summary>Noise smoothed over a tenth of a second plus a constant lean, from the start of the work to the release.</summary>
    static double[] Work(Draw draw, double noise, double lean, bool shaken)
    {
        const int Smooth = 8;
        var raw = new double[Motion.Samples + Smooth];
        for (var i = 0; i < raw.Length; i++) raw[i] = draw.Normal();
        var force = new double[Motion.Samples];
        for (var i = 0; i < force.Length; i++)
        {
            if (Motion.Time(i) < Motion.SessionStarts || !shaken && Motion.Time(i) >= 0) continue;
            force[i] = noise * raw.AsSpan(i, Smooth).ToArray().Sum() / Math.Sqrt(Smooth) + (Motion.Time(i) < 0 ? lean : 0);
        }
        return force;
    }

    static double AmplitudeAtRelease(double[] force, double hz, double damping)
    {
        var state = new Oscillator(hz, damping, Dt);
        for (var i = 0; Motion.Time(i) < 0; i++) state.Step(force[i]);
        return state.Amplitude;
    }
}
