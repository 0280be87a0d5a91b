namespace ScaleLink.Weighing.Settling;

/// <summary>
/// Notices that the newest blocks no longer belong to the motion seen so far: a hand on the car, a lifted wheel, a slip.
/// Blocks from before such an event must not enter an estimate.
/// </summary>
sealed class EventGuard
{
    const int Look = 40;
    const int Run = 5;
    const int Rest = 10;
    const int LeastHistory = 12;
    const double SingleLimit = 5;
    const double RunLimit = 5;

    int _raised = int.MinValue / 2;

    /// <summary>Number of the first block that belongs to the present motion.</summary>
    public int Since { get; private set; }

    /// <summary>Looks at the newest block against the loads published before it. True: an event has begun.</summary>
    /// <param name="history">The blocks, the newest included.</param>
    /// <param name="published">The loads published before this block, kg.</param>
    /// <param name="noise">Standard deviation of a block at rest, kg.</param>
    public bool Sees(BlockHistory history, in Corners published, in Corners noise)
    {
        var newest = history.Count - 1;
        var past = Math.Min(Look, newest - Since);
        if (newest - _raised < Rest || past < LeastHistory) return false;
        foreach (var corner in Corners.All)
        {
            var blocks = history.Newest(corner, past + 1);
            double load = published[corner], s = noise[corner];
            if (Math.Abs(blocks[^1] - load) > SingleLimit * Math.Max(Rms(blocks[..^1], load), s)) return Raise(newest, newest);
            var run = Math.Abs(Mean(blocks[^Run..]) - load);
            if (run > RunLimit * Math.Max(RunRms(blocks[..^Run], load), s / Math.Sqrt(Run))) return Raise(newest, newest - Run + 1);
        }
        return false;
    }

    public void Clear() => (Since, _raised) = (0, int.MinValue / 2);

    bool Raise(int newest, int since)
    {
        (_raised, Since) = (newest, since);
        return true;
    }

    static double Mean(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values) sum += value;
        return sum / values.Length;
    }

    static double Rms(ReadOnlySpan<double> values, double about)
    {
        var sum = 0.0;
        foreach (var value in values) sum += (value - about) * (value - about);
        return Math.Sqrt(sum / values.Length);
    }

    /// <summary>Root mean square of the means of five neighbours.</summary>
    static double RunRms(ReadOnlySpan<double> values, double about)
    {
        var sum = 0.0;
        var runs = values.Length - Run + 1;
        for (var i = 0; i < runs; i++)
        {
            var off = Mean(values.Slice(i, Run)) - about;
            sum += off * off;
        }
        return Math.Sqrt(sum / runs);
    }
}
