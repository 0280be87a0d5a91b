namespace Weighing.Tests.Settling.Scenarios;

/// <summary>
/// Stick-slip after the release: the rest position jumps, the pads follow through the warp mode, which rings. Rarer as time passes.
/// </summary>
sealed class Slips
{
    readonly List<(double Time, double[] Size)> _slips = [];

    public Slips(Draw draw, Motion motion, bool present)
    {
        if (!present) return;
        foreach (var t in draw.Poisson(.5, 0, Motion.End))
        {
            if (draw.Uniform(0, 1) > Math.Exp(-t / 3)) continue;
            var size = draw.Sign() * draw.LogUniform(.05, .6);
            var pads = new double[4];
            for (var pad = 0; pad < 4; pad++) pads[pad] = size * Motion.Warp[pad] * (1 + .1 * draw.Normal());
            _slips.Add((t, pads));
            motion.Slips.Add(t);
        }
    }

    public void AddTo(Motion motion, Oscillator warp)
    {
        for (var pad = 0; pad < 4; pad++)
        {
            var state = warp;
            for (var i = 0; i < Motion.Samples; i++)
            {
                var jumped = 0.0;
                foreach (var (time, size) in _slips)
                    if (time <= Motion.Time(i)) jumped += size[pad];
                motion.AtRest[pad][i] += jumped;
                motion.Loads[pad][i] += state.Q;
                state.Step(jumped);
            }
        }
    }
}
