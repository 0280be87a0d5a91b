using ScaleLink.Measure;

namespace Weighing.Tests.Settling.Scenarios;

/// <summary>What the estimator gets to see, 50 ms blocks of four pads, and beside it the truth at the end of each block.</summary>
sealed class RockingRecord
{
    const int PerBlock = 4;

    public RockingRecord(Motion motion, double[][] read)
    {
        Motion = motion;
        Blocks = new Corners[Motion.Samples / PerBlock];
        Truth = new Corners[Blocks.Length];
        for (var k = 0; k < Blocks.Length; k++)
        {
            var at = k * PerBlock;
            Blocks[k] = Corners.From(c => read[(int)c].AsSpan(at, PerBlock).ToArray().Average());
            Truth[k] = Corners.From(c => motion.AtRest[(int)c][at + PerBlock - 1]);
        }
    }

    public Motion Motion { get; }

    public Corners[] Blocks { get; }

    public Corners[] Truth { get; }

    /// <summary>When block <paramref name="k"/> is complete, seconds after the last contact has left the car.</summary>
    public static double Time(int k) => Motion.Time(k * PerBlock + PerBlock - 1);

    /// <summary>True when friction let go within the last second before <paramref name="t"/>.</summary>
    public bool SlippedWithinASecond(double t)
    {
        foreach (var slip in Motion.Slips)
            if (slip <= t && t < slip + 1) return true;
        return false;
    }

    /// <summary>Noise of a block as the bay would have learned it in quiet times, from the quiet start of this record, kg.</summary>
    public Corners QuietNoise()
    {
        var quiet = (int)((Motion.SessionStarts - Motion.Start) * Motion.SampleRate / PerBlock);
        return Corners.From(corner =>
        {
            var steps = new double[quiet - 1];
            for (var k = 1; k < quiet; k++) steps[k - 1] = Math.Abs(Blocks[k][corner] - Blocks[k - 1][corner]);
            Array.Sort(steps);
            return Math.Max(.01, 1.4826 * steps[steps.Length / 2] / Math.Sqrt(2));
        });
    }
}
