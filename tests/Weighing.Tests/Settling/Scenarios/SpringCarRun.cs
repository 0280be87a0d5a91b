namespace Weighing.Tests.Settling.Scenarios;

/// <summary>
/// Runs a spring car: deviations from its first rest, semi-implicit steps of 0.5 ms. The truth is the reading 45 s after the
/// release, when nothing moves any more and friction holds what it holds.
/// </summary>
sealed class SpringCarRun
{
    const double Dt = .0005;
    const int StepsPerSample = 25;
    const double TruthAfter = 45;

    readonly SpringCar _car;
    readonly Standing _standing;
    readonly Push? _push;
    readonly double[] _lift = new double[4];
    readonly double[] _wheel = new double[4];
    readonly double[] _wheelSpeed = new double[4];
    readonly double[] _friction = new double[4];
    readonly double[] _suspension = new double[4];
    double _heave, _pitch, _roll, _heaveSpeed, _pitchSpeed, _rollSpeed;

    SpringCarRun(Draw draw, SpringCarKind kind, Standing standing, SpringCar car)
    {
        (_standing, _car) = (standing, car);
        _push = kind.Thrown ? null : new(draw, _car);
        for (var pad = 0; pad < 4; pad++)
        {
            // Perch travel that makes the wanted change of load were each corner to give way on its own.
            var stiff = 1 / (1 / (_car.Spring[pad] + 2 * _car.Bar[pad]) + 1 / _car.Tyre[pad]);
            _lift[pad] = _standing.Change[pad] * SpringCar.Gravity / stiff;
        }
    }

    public static Motion Run(Draw draw, SpringCarKind kind)
    {
        var standing = new Standing(draw);
        return Run(draw, kind, standing, new(draw, standing, kind));
    }

    /// <summary>The same car over and over: thrown or worked on anew each time, and turned by as much.</summary>
    public static Motion[] Series(Draw draw, SpringCarKind kind, int count)
    {
        var standing = new Standing(draw);
        var car = new SpringCar(draw, standing, kind);
        return [.. Enumerable.Range(0, count).Select(_ => Run(draw, kind, standing, car))];
    }

    static Motion Run(Draw draw, SpringCarKind kind, Standing standing, SpringCar car)
    {
        var run = new SpringCarRun(draw, kind, standing, car);
        var motion = new Motion
        {
            BlindDirection = run._car.BlindDirection,
            WarpVector = SpringCar.WarpVector,
            RideRates = run._car.RideRates,
        };
        for (var i = 0; i < Motion.Samples; i++)
        {
            var t = Motion.Time(i);
            if (kind.Thrown && t == 0) run.Throw(draw);
            for (var pad = 0; pad < 4; pad++) motion.Loads[pad][i] = run.Load(pad);
            for (var step = 0; step < StepsPerSample; step++) run.Step(t + step * Dt);
        }
        for (var t = Motion.End; t < TruthAfter && run.Moves; t += StepsPerSample * Dt)
            for (var step = 0; step < StepsPerSample; step++) run.Step(t);
        for (var pad = 0; pad < 4; pad++) Array.Fill(motion.AtRest[pad], run.Load(pad));
        return motion;
    }

    /// <summary>False once no reading can change any more by a milligram.</summary>
    bool Moves => Math.Abs(_heaveSpeed) + Math.Abs(_pitchSpeed) + Math.Abs(_rollSpeed) + _wheelSpeed.Sum(Math.Abs) > 1e-9;

    void Throw(Draw draw) =>
        (_heave, _pitch, _roll) = (.008 * draw.Sign(), .004 * draw.Sign(), .004 * draw.Sign());

    double Load(int pad) => _standing.Before[pad] - TyreForce(pad) / SpringCar.Gravity;

    /// <summary>Upward force of the ground on the wheel beyond rest, taken negative: positive when the wheel is lifted.</summary>
    double TyreForce(int pad) => _car.Tyre[pad] * _wheel[pad] + _car.TyreDamping[pad] * _wheelSpeed[pad];

    void Step(double t)
    {
        var done = _standing.Done(t);
        Span<double> gap = stackalloc double[4];
        for (var pad = 0; pad < 4; pad++)
            gap[pad] = _heave + _car.X[pad] * _pitch + _car.Y[pad] * _roll - _wheel[pad] - done * _lift[pad];
        var push = _push?.At(t) ?? 0;
        double lift = -push, pitch = -push * (_push?.X ?? 0), roll = -push * (_push?.Y ?? 0);
        for (var pad = 0; pad < 4; pad++)
        {
            var speed = _heaveSpeed + _car.X[pad] * _pitchSpeed + _car.Y[pad] * _rollSpeed - _wheelSpeed[pad];
            var other = pad ^ 1;
            // Positive: pulls the body down and the wheel up.
            var force = _car.Spring[pad] * gap[pad] + _car.Bar[pad] * (gap[pad] - gap[other])
                + (speed > 0 ? _car.Rebound[pad] : _car.Bump[pad]) * speed + Friction(pad, speed);
            _suspension[pad] = force;
            lift -= force;
            pitch -= force * _car.X[pad];
            roll -= force * _car.Y[pad];
        }
        for (var pad = 0; pad < 4; pad++)
            _wheelSpeed[pad] += Dt * (_suspension[pad] - TyreForce(pad)) / _car.Unsprung[pad];
        _heaveSpeed += Dt * lift / _car.Mass;
        _pitchSpeed += Dt * pitch / _car.PitchInertia;
        _rollSpeed += Dt * roll / _car.RollInertia;
        for (var pad = 0; pad < 4; pad++) _wheel[pad] += Dt * _wheelSpeed[pad];
        _heave += Dt * _heaveSpeed;
        _pitch += Dt * _pitchSpeed;
        _roll += Dt * _rollSpeed;
    }

    /// <summary>Stiff until the limit, then sliding; a little lossy while stuck.</summary>
    double Friction(int pad, double speed)
    {
        var limit = _car.FrictionLimit[pad];
        if (limit == 0) return 0;
        var wanted = _friction[pad] + _car.StuckRate[pad] * speed * Dt;
        _friction[pad] = Math.Clamp(wanted, -limit, limit);
        return wanted == _friction[pad] ? wanted + _car.StuckLoss[pad] * speed : _friction[pad];
    }
}
