using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.WorkSessions.Planning;

/// <summary>
/// The best plan among all that use whole numbers of the smallest turn, exactly: corner after corner is fixed, from its best
/// unrounded number outwards, and a branch is left as soon as the best that the open corners could still do, unrounded
/// within their threads and ride height limits, is no better than the best plan so far.
/// </summary>
sealed class LatticeSearch
{
    readonly PlanProblem problem;
    readonly BoxQuadratic missed;
    readonly HeightPrice floor;
    readonly double[] turns = new double[4];
    double bestValue = double.PositiveInfinity;
    Corners best;

    LatticeSearch(PlanProblem problem)
    {
        this.problem = problem;
        var normal = Normal(problem, PlanObjective.PerTurnSquared);
        var centre = normal.Inverse() * Pull(problem);
        missed = new(normal, centre, problem.Limits.LowestTurns, problem.Limits.HighestTurns);
        floor = HeightPrice.Of(problem, normal, centre);
    }

    /// <summary>The best turns within the limits.</summary>
    public static Corners Best(PlanProblem problem)
    {
        var search = new LatticeSearch(problem);
        search.Descend(open: 4, touched: 0);
        return search.best;
    }

    /// <summary>The turns that would be best without rounding and without limits, fixed perches left alone.</summary>
    public static Corners Unrounded(PlanProblem problem) => Normal(problem, 1e-9).Inverse() * Pull(problem);

    void Descend(int open, double touched)
    {
        if (open == 0)
        {
            if (missed.Minimum(turns, 0) + touched is var value && value < bestValue)
                (best, bestValue) = (new(turns[0], turns[1], turns[2], turns[3]), value);
            return;
        }
        var level = open - 1;
        Span<double> relaxed = stackalloc double[4];
        turns.CopyTo(relaxed);
        floor.Floor(relaxed, open);
        // What the open corners can still do gets only worse on the way out, to either side.
        var step = problem.SmallestTurn;
        var first = (long)Math.Round(relaxed[level] / step);
        Try(first, level, touched);
        for (var k = first - 1; Try(k, level, touched); k--) { }
        for (var k = first + 1; Try(k, level, touched); k++) { }
    }

    // False when this number and all further out can be left.
    bool Try(long steps, int level, double touched)
    {
        var turn = steps * problem.SmallestTurn;
        if (turn < problem.Limits.LowestTurns[(Corner)level] - 1e-9 || turn > problem.Limits.HighestTurns[(Corner)level] + 1e-9)
            return false;
        Span<double> relaxed = stackalloc double[4];
        turns[level] = turn;
        turns.CopyTo(relaxed);
        var bound = floor.Floor(relaxed, level) + touched;
        if (bound >= bestValue)
            return false;
        var cost = steps == 0 ? 0 : PlanObjective.PerCorner;
        if (bound + cost < bestValue && HeightsCanHold(level))
            Descend(level, touched + cost);
        turns[level] = turn;
        return true;
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
            -now.MeanRideHeightMm * height, -now.RakeMm * height * problem.Targets.RakeWeight, -now.LeftRightDifferenceMm * height);
    }

    // A perch that cannot move has no effect to count on.
    static CornerMatrix Weighted(PlanProblem problem)
    {
        var height = 1 / problem.Targets.RideHeightToleranceMm;
        var weights = new Corners(1 / problem.Targets.CrossWeightTolerancePercent, height, height * problem.Targets.RakeWeight, height);
        var free = Corners.From(c => problem.Limits.LowestTurns[c] < problem.Limits.HighestTurns[c] ? 1 : 0);
        return CornerMatrix.Diagonal(weights) * problem.PerTurn * CornerMatrix.Diagonal(free);
    }
}
