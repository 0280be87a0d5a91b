using CarOnPads.Physics;

namespace Daemon.Tests.Settling.Trials;

/// <summary>People who walk past the bay: 2 to 5 s at 1.6 to 2.1 steps a second, each step a push down and one up of 0.08 s, 0.05 to 0.6 kg at the loudest. The ranges are assumptions.</summary>
internal static class Passers
{
    private const double PerSecond = 0.08, HalfStep = 0.08;

    public static void Walk(CarOnPads.Bench.Bay bay, Random random, double from, double to)
    {
        double U(double low, double high) => low + (high - low) * random.NextDouble();
        for (var t = from + Wait(); t < to; t += Wait())
        {
            var (lasts, pace, loudest, wheel) = (U(2, 5), U(1.6, 2.1), Math.Exp(U(Math.Log(.05), Math.Log(.6))), (Wheel)random.Next(4));
            for (var step = 0.0; step < lasts; step += 1 / pace)
                Step(bay, wheel, t + step, loudest * Math.Sin(Math.PI * step / lasts) * bay.Options.Gravity);
        }

        double Wait() => -Math.Log(1 - random.NextDouble()) / PerSecond;
    }

    private static void Step(CarOnPads.Bench.Bay bay, Wheel wheel, double at, double newtons)
    {
        bay.Schedule(at, b => b.Rig.Lean(wheel, newtons, at + HalfStep));
        bay.Schedule(at + HalfStep, b => b.Rig.Lean(wheel, -newtons, at + 2 * HalfStep));
    }
}
