namespace Weighing.Tests.Settling.Scenarios;

/// <summary>One damped mode, stepped exactly under a force held constant over a sample: q'' + 2 z w q' + w² q = w² u.</summary>
struct Oscillator
{
    readonly double _cos;
    readonly double _sin;
    readonly double _tilt;

    /// <param name="hz">Undamped frequency.</param>
    /// <param name="damping">Damping ratio.</param>
    /// <param name="dt">Step, s.</param>
    public Oscillator(double hz, double damping, double dt)
    {
        var w = 2 * Math.PI * hz;
        var root = Math.Sqrt(1 - damping * damping);
        var decay = Math.Exp(-damping * w * dt);
        (_cos, _sin) = (decay * Math.Cos(w * root * dt), decay * Math.Sin(w * root * dt) / root);
        _tilt = damping * _sin;
    }

    /// <summary>Displacement.</summary>
    public double Q { get; set; }

    /// <summary>Velocity over angular frequency.</summary>
    public double P { get; set; }

    public readonly double Amplitude => Math.Sqrt(Q * Q + P * P);

    public void Step(double force)
    {
        var off = Q - force;
        Q = force + off * (_cos + _tilt) + P * _sin;
        P = P * (_cos - _tilt) - off * _sin;
    }
}
