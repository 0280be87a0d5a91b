namespace Weighing.Tests.Settling.Scenarios;

/// <summary>A person who works on the body with 150 to 450 N at one place, unsteadily, until t = 0.</summary>
sealed class Push
{
    const double Pace = .15;

    readonly double[] _levels = new double[(int)(-Motion.SessionStarts / Pace) + 3];

    public Push(Draw draw, SpringCar car)
    {
        var strength = draw.Uniform(150, 450);
        for (var i = 0; i < _levels.Length; i++) _levels[i] = strength * (.6 + draw.Uniform(-1, 1));
        X = .5 * draw.Sign() * car.Wheelbase;
        Y = draw.Uniform(-.5, .5) * car.Track;
    }

    public double X { get; }

    public double Y { get; }

    /// <summary>Downward force, N.</summary>
    public double At(double t)
    {
        if (t is < Motion.SessionStarts or >= 0) return 0;
        var at = (t - Motion.SessionStarts) / Pace;
        var i = (int)at;
        return _levels[i] + (at - i) * (_levels[i + 1] - _levels[i]);
    }
}
