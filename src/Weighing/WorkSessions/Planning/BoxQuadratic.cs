using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.WorkSessions.Planning;

/// <summary>
/// (t - centre)' normal (t - centre) over a box, exactly: four numbers are few enough to try every combination of
/// "at its lower end, at its upper end, in between".
/// </summary>
sealed class BoxQuadratic
{
    readonly double[,] normal = new double[4, 4];
    readonly double[] centre, low, high;

    public BoxQuadratic(in CornerMatrix normal, in Corners centre, in Corners low, in Corners high)
    {
        for (var i = 0; i < 4; i++)
            for (var j = 0; j < 4; j++)
                this.normal[i, j] = normal[(Corner)i][(Corner)j];
        this.centre = List(centre);
        this.low = List(low);
        this.high = List(high);
    }

    /// <summary>
    /// The least value when the first <paramref name="free"/> numbers may be anything in the box and the others stay as they
    /// are in <paramref name="at"/>. The free ones are set to where that is.
    /// </summary>
    public double Minimum(Span<double> at, int free)
    {
        if (free == 0)
            return Value(at);
        var least = double.PositiveInfinity;
        Span<double> trial = stackalloc double[4], best = stackalloc double[4];
        Span<bool> held = stackalloc bool[4];
        for (var combination = 0; combination < Combinations[free]; combination++)
        {
            at.CopyTo(trial);
            held.Fill(true);
            for (int i = 0, rest = combination; i < free; i++, rest /= 3)
            {
                held[i] = rest % 3 != 2;
                trial[i] = rest % 3 == 0 ? low[i] : high[i];
            }
            if (!Settle(trial, held, free) || Value(trial) is var value && value >= least)
                continue;
            least = Value(trial);
            trial.CopyTo(best);
        }
        best.CopyTo(at);
        return least;
    }

    static readonly int[] Combinations = [1, 3, 9, 27, 81];

    // Puts the numbers that are not held where the slope along each is zero; false when that is outside the box.
    bool Settle(Span<double> at, ReadOnlySpan<bool> held, int free)
    {
        Span<int> loose = stackalloc int[4];
        var count = 0;
        for (var i = 0; i < free; i++)
            if (!held[i])
                loose[count++] = i;
        Span<double> system = stackalloc double[16], right = stackalloc double[4];
        for (var r = 0; r < count; r++)
        {
            for (var c = 0; c < count; c++)
                system[4 * r + c] = normal[loose[r], loose[c]];
            for (var j = 0; j < 4; j++)
                right[r] -= j < free && !held[j] ? 0 : normal[loose[r], j] * (at[j] - centre[j]);
        }
        for (var pivot = 0; pivot < count; pivot++)
            for (var r = pivot + 1; r < count; r++)
            {
                var factor = system[4 * r + pivot] / system[4 * pivot + pivot];
                for (var c = pivot; c < count; c++)
                    system[4 * r + c] -= factor * system[4 * pivot + c];
                right[r] -= factor * right[pivot];
            }
        for (var r = count - 1; r >= 0; r--)
        {
            for (var c = r + 1; c < count; c++)
                right[r] -= system[4 * r + c] * right[c];
            right[r] /= system[4 * r + r];
            var value = centre[loose[r]] + right[r];
            if (!(value >= low[loose[r]] && value <= high[loose[r]]))
                return false;
            at[loose[r]] = value;
        }
        return true;
    }

    double Value(ReadOnlySpan<double> at)
    {
        double value = 0;
        for (var i = 0; i < 4; i++)
            for (var j = 0; j < 4; j++)
                value += (at[i] - centre[i]) * normal[i, j] * (at[j] - centre[j]);
        return value;
    }

    static double[] List(in Corners corners) => [corners.LF, corners.RF, corners.LR, corners.RR];
}
