using ScaleLink.Measure;

namespace Weighing.Tests.Settling;

/// <summary>Three damped modes and reproducible noise on four pads, blocks of 50 ms.</summary>
static class DecayingModes
{
    static readonly double[] Loads = [301, 299, 251, 249];

    static readonly (double Hz, double Damping, double[] Amplitudes, double Phase)[] Modes =
    [
        (1.5, .08, [10, 9, 8, 9], 0),
        (2.2, .12, [6, -6, 5, -5], 1),
        (2.9, .10, [4, 4, -5, -4], 2),
    ];

    public static Corners[] Blocks(int count)
    {
        var state = 12345L;
        var blocks = new Corners[count];
        Span<double> pads = stackalloc double[4];
        for (var k = 0; k < count; k++)
        {
            for (var pad = 0; pad < 4; pad++)
            {
                state = (1103515245 * state + 12345) % (1L << 31);
                pads[pad] = Loads[pad] + Rocking(pad, k / 20.0) + .16 * (state / (double)(1L << 31) - .5);
            }
            blocks[k] = new(pads[0], pads[1], pads[2], pads[3]);
        }
        return blocks;
    }

    static double Rocking(int pad, double t)
    {
        var sum = 0.0;
        foreach (var (hz, damping, amplitudes, phase) in Modes)
        {
            var w = 2 * Math.PI * hz;
            sum += amplitudes[pad] * Math.Exp(-damping * w * t) * Math.Cos(w * Math.Sqrt(1 - damping * damping) * t + phase);
        }
        return sum;
    }
}
