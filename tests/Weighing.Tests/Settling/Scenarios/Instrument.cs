namespace Weighing.Tests.Settling.Scenarios;

/// <summary>Four pads with noise, mains hum, creep, a slow wander and a step of 0.05 kg.</summary>
static class Instrument
{
    const double StepKg = .05;

    public static RockingRecord Read(Motion motion, Draw draw)
    {
        var read = new double[4][];
        for (var pad = 0; pad < 4; pad++)
        {
            read[pad] = new double[Motion.Samples];
            double noise = draw.Uniform(.05, .2), mains = draw.Sign() < 0 ? 50 : 60, hum = draw.Uniform(0, .15);
            double phase = draw.Uniform(0, 2 * Math.PI), second = draw.Uniform(0, 2 * Math.PI);
            double creep = draw.Sign() * draw.Uniform(.0002, .001), tau = draw.Uniform(60, 200), on = draw.Uniform(30, 600);
            var wander = 0.0;
            for (var i = 0; i < Motion.Samples; i++)
            {
                var t = Motion.Time(i);
                wander += .003 * draw.Normal() / Math.Sqrt(Motion.SampleRate);
                var slow = creep * motion.AtRest[pad][i] * (1 - Math.Exp(-(t - Motion.Start + on) / tau)) + wander;
                motion.AtRest[pad][i] += slow;
                var w = 2 * Math.PI * mains * t;
                var value = motion.Loads[pad][i] + slow + noise * draw.Normal()
                    + hum * (Math.Sin(w + phase) + .3 * Math.Sin(2 * w + second));
                read[pad][i] = StepKg * Math.Round(value / StepKg);
            }
        }
        return new(motion, read);
    }
}
