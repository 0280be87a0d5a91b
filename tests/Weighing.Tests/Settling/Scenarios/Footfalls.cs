namespace Weighing.Tests.Settling.Scenarios;

/// <summary>People who walk past the car: each step one full sine cycle of 0.16 s, the passage under a half sine.</summary>
sealed class Footfalls
{
    const double StepSeconds = 0.16;

    public double[] Force { get; } = new double[Motion.Samples];

    public static Footfalls Draw(Draw draw)
    {
        var falls = new Footfalls();
        foreach (var start in draw.Poisson(.08, Motion.Start, Motion.End))
        {
            double length = draw.Uniform(2, 5), pace = draw.Uniform(1.6, 2.1), size = draw.LogUniform(.05, .6);
            for (var step = 0.0; step < length; step += 1 / pace) falls.Add(start + step, size * Math.Sin(Math.PI * step / length));
        }
        return falls;
    }

    /// <summary>The part that reaches the pads through the floor.</summary>
    public void AddDirect(Motion motion, Draw draw)
    {
        for (var pad = 0; pad < 4; pad++)
        {
            var share = draw.Uniform(.2, 1);
            for (var i = 0; i < Motion.Samples; i++) motion.Loads[pad][i] += share * Force[i];
        }
    }

    void Add(double at, double size)
    {
        for (var i = 0; i < Motion.Samples; i++)
            if (Motion.Time(i) - at is >= 0 and < StepSeconds and var since)
                Force[i] += size * Math.Sin(2 * Math.PI * since / StepSeconds);
    }
}
