namespace Weighing.Tests.Settling.Scenarios;

/// <summary>A settled car that a hand leans on from t = 0 to t = 3 s, with a wobble of 3 % about a steady force.</summary>
static class LeaningHand
{
    public const double LetsGo = 3;

    /// <summary>The pads feel the hand at once, as when it presses on a wheel.</summary>
    public static Motion OnTheWheels(Draw draw) => Run(draw, body: false);

    /// <summary>The hand presses on the body, which has to sink into its springs first.</summary>
    public static Motion OnTheBody(Draw draw) => Run(draw, body: true);

    static Motion Run(Draw draw, bool body)
    {
        var motion = new Motion();
        var standing = new Standing(draw);
        double size = draw.LogUniform(2, 30), wobble = draw.Uniform(.3, 1.5), phase = draw.Uniform(0, 2 * Math.PI);
        double forward = draw.Uniform(.2, .8), left = draw.Uniform(.2, .8);
        var heave = new Oscillator(draw.Uniform(1.2, 2.5), draw.LogUniform(.03, .30), 1 / Motion.SampleRate);
        for (var i = 0; i < Motion.Samples; i++)
        {
            var t = Motion.Time(i);
            var steady = t is >= 0 and < LetsGo ? size : 0;
            var hand = steady * (1 + .03 * Math.Sin(2 * Math.PI * wobble * t + phase));
            for (var pad = 0; pad < 4; pad++)
            {
                var share = (pad < 2 ? forward : 1 - forward) * (pad % 2 == 0 ? left : 1 - left);
                motion.AtRest[pad][i] = standing.Before[pad] + share * steady;
                motion.Loads[pad][i] = standing.Before[pad] + share * (body ? heave.Q : hand);
            }
            heave.Step(hand);
        }
        return motion;
    }
}
