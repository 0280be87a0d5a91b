namespace Weighing.Tests.Settling.Scenarios;

/// <summary>How a car stands before and after the crew has turned its perches.</summary>
sealed class Standing
{
    const double RampSeconds = 0.3;

    public Standing(Draw draw)
    {
        Total = draw.Uniform(900, 1500);
        FrontWeight = draw.Uniform(.42, .58);
        LeftSideWeight = draw.Uniform(.47, .53);
        var offset = draw.Uniform(-10, 10);
        var turn = draw.Uniform(-15, 15);
        for (var pad = 0; pad < 4; pad++)
        {
            var front = pad < 2 ? FrontWeight : 1 - FrontWeight;
            var left = pad % 2 == 0 ? LeftSideWeight : 1 - LeftSideWeight;
            Before[pad] = Total * front * left + offset * Motion.Warp[pad];
            Change[pad] = turn * Motion.Warp[pad] + .5 * draw.Normal();
        }
        RampStart = draw.Uniform(-3.5, -.5);
    }

    public double Total { get; }

    public double FrontWeight { get; }

    public double LeftSideWeight { get; }

    public double RampStart { get; }

    public double[] Before { get; } = new double[4];

    public double[] Change { get; } = new double[4];

    /// <summary>Share of the change made by time <paramref name="t"/>.</summary>
    public double Done(double t) => Math.Clamp((t - RampStart) / RampSeconds, 0, 1);
}
