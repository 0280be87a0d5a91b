using CarOnPads.Bench;
using CarOnPads.Cells;
using CarOnPads.Control;
using CarOnPads.Physics;
using ScaleLink.Protocol.PadFrames;

namespace CarOnPads.Tests;

/// <summary>A bay in virtual time with a tap on every cable.</summary>
sealed class Bench : IDisposable
{
    readonly Tap[] _taps = [new(), new(), new(), new()];

    public Bench(string imperfections = "none", double hertz = 80, long seed = 1, bool raised = true)
    {
        Bay = new Bay(
            new BayOptions { Hertz = hertz, Seed = seed, Raised = raised, Imperfections = Imperfections.Parse(imperfections) },
            wheel => _taps[(int)wheel]);
    }

    public Bay Bay { get; }

    public Tap Tap(Wheel wheel = Wheel.LF) => _taps[(int)wheel];

    /// <summary>Advances in beats like the program's.</summary>
    public Bench Run(double seconds)
    {
        for (var (end, start, beat) = (Bay.Time + seconds, Bay.Time, 1); Bay.Time + CarDynamics.Step / 2 < end; beat++)
            Bay.AdvanceTo(Math.Min(end, start + beat * 0.004));
        return this;
    }

    public string Do(string command)
    {
        var reply = Conversation.Answer(Bay, command);
        Assert.StartsWith("{\"ok\":true", reply);
        return reply;
    }

    /// <summary>Forgets, runs, and returns what one pad said meanwhile.</summary>
    public Heard Listen(double seconds, Wheel wheel = Wheel.LF)
    {
        Tap(wheel).Clear();
        Run(seconds);
        return Tap(wheel).Decode();
    }

    /// <summary>Mean of the pad's summed counts in nominal kg over some seconds.</summary>
    public double Kilograms(double seconds = 0.5, Wheel wheel = Wheel.LF) =>
        Listen(seconds, wheel).Samples.Average(Sum) * Bay.Pad(wheel).KgPerCount;

    public static double Sum(SampleFrame sample)
    {
        var sum = 0.0;
        for (var cell = 0; cell < sample.Cells; cell++)
            sum += sample[cell];
        return sum;
    }

    public void PutMass(double kg, double forward = 0, double left = 0, Wheel wheel = Wheel.LF) =>
        Run(Bay.PutMass(wheel, kg, forward, left) - Bay.Time + 0.05);

    public void Dispose() => Bay.Dispose();
}
