using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.Planning;

/// <summary>
/// The best plan among all that use whole numbers of the smallest turn, exactly: depth first over the four corners in the
/// triangular form of the least squares problem, nearest number first, leaving a branch as soon as what is already missed
/// exceeds the best plan so far.
/// </summary>
sealed class LatticeSearch
{
    readonly PlanProblem problem;
    readonly double[,] upper;
    readonly double[] centre;
    readonly double[] turns = new double[4];
    double bestValue = double.PositiveInfinity;
    Corners best;

    LatticeSearch(PlanProblem problem)
    {
        this.problem = problem;
        var normal = Normal(problem, PlanObjective.PerTurnSquared);
        upper = Triangle(normal);
        var unrounded = normal.Inverse() * Pull(problem);
        centre = [unrounded.LF, unrounded.RF, unrounded.LR, unrounded.RR];
    }

    /// <summary>The best turns within the limits.</summary>
    public static Corners Best(PlanProblem problem)
    {
        var search = new LatticeSearch(problem);
        search.Descend(3, 0);
        return search.best;
    }

    /// <summary>The turns that would be best without rounding and without limits, fixed perches left alone.</summary>
    public static Corners Unrounded(PlanProblem problem) => Normal(problem, 1e-9).Inverse() * Pull(problem);

    void Descend(int level, double missed)
    {
        if (level < 0)
        {
            (best, bestValue) = (new(turns[0], turns[1], turns[2], turns[3]), missed);
            return;
        }
        var shift = 0.0;
        for (var j = level + 1; j < 4; j++)
            shift += upper[level, j] * (turns[j] - centre[j]);
        var nearest = centre[level] - shift / upper[level, level];
        foreach (var choice in Choices((Corner)level, nearest))
        {
            var distance = upper[level, level] * (choice - nearest);
            var soFar = missed + distance * distance;
            if (soFar >= bestValue)
                break;
            soFar += choice == 0 ? 0 : PlanObjective.PerCorner;
            turns[level] = choice;
            if (soFar < bestValue && HeightsCanHold(level))
                Descend(level - 1, soFar);
        }
    }

    // Whole steps within the thread range, from the nearest outwards.
    IEnumerable<double> Choices(Corner corner, double nearest)
    {
        var step = problem.SmallestTurn;
        var low = (long)Math.Ceiling(problem.Limits.LowestTurns[corner] / step - 1e-9);
        var high = (long)Math.Floor(problem.Limits.HighestTurns[corner] / step + 1e-9);
        var down = (long)Math.Clamp(Math.Floor(nearest / step), low - 1, high);
        var up = down + 1;
        while (down >= low || up <= high)
        {
            var takeUp = down < low || (up <= high && up * step - nearest < nearest - down * step);
            yield return step * (takeUp ? up++ : down--);
        }
    }

    // Could the corners not yet decided still bring every ride height within its limits?
    bool HeightsCanHold(int level)
    {
        foreach (var corner in Corners.All)
        {
            var effect = problem.HeightsPerTurn[corner];
            double lowest = 0, highest = 0;
            for (var i = 0; i < 4; i++)
            {
                var one = effect[(Corner)i];
                var (a, b) = i >= level
                    ? (one * turns[i], one * turns[i])
                    : (one * problem.Limits.LowestTurns[(Corner)i], one * problem.Limits.HighestTurns[(Corner)i]);
                (lowest, highest) = (lowest + Math.Min(a, b), highest + Math.Max(a, b));
            }
            if (lowest > problem.Limits.HighestRise[corner] + 1e-9 || highest < problem.Limits.LowestRise[corner] - 1e-9)
                return false;
        }
        return true;
    }

    // Least squares in units of tolerance: (weighted effects)' (weighted effects) + a little for every turn.
    static CornerMatrix Normal(PlanProblem problem, double perTurnSquared)
    {
        var weighted = Weighted(problem);
        return weighted.Transposed * weighted + CornerMatrix.Diagonal(Corners.Same(perTurnSquared));
    }

    static Corners Pull(PlanProblem problem)
    {
        var (now, height) = (problem.Now, 1 / problem.Targets.RideHeightToleranceMm);
        return Weighted(problem).Transposed * new Corners(-now.CrossWeightPercent / problem.Targets.CrossWeightTolerancePercent,
            -now.MeanRideHeightMm * height, -now.RakeMm * height, -now.SideDifferenceMm * height);
    }

    // A perch that cannot move has no effect to count on.
    static CornerMatrix Weighted(PlanProblem problem)
    {
        var height = 1 / problem.Targets.RideHeightToleranceMm;
        var weights = new Corners(1 / problem.Targets.CrossWeightTolerancePercent, height, height, height);
        var free = Corners.From(c => problem.Limits.LowestTurns[c] < problem.Limits.HighestTurns[c] ? 1 : 0);
        return CornerMatrix.Diagonal(weights) * problem.PerTurn * CornerMatrix.Diagonal(free);
    }

    // Cholesky: normal = upper' upper.
    static double[,] Triangle(CornerMatrix normal)
    {
        var r = new double[4, 4];
        for (var i = 0; i < 4; i++)
            for (var j = i; j < 4; j++)
            {
                var rest = normal[(Corner)i][(Corner)j];
                for (var k = 0; k < i; k++)
                    rest -= r[k, i] * r[k, j];
                r[i, j] = i == j ? Math.Sqrt(rest) : rest / r[i, i];
            }
        return r;
    }
}
