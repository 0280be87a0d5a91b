using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.WorkSessions.Planning;

/// <summary>
/// A floor under the value of every plan that keeps to the ride height limits. Each limit gets a price (a Lagrange
/// multiplier) for going beyond it; what a plan misses plus what it would pay is a quadratic again, and never more than what
/// an allowed plan misses. Any prices of zero or more give a valid floor; good ones give a high one.
/// </summary>
sealed class HeightPrice
{
    const int Rounds = 40;

    readonly BoxQuadratic priced;
    readonly double constant;

    HeightPrice(BoxQuadratic priced, double constant)
    {
        this.priced = priced;
        this.constant = constant;
    }

    /// <summary>The floor, found for the plan that is best unrounded.</summary>
    public static HeightPrice Of(PlanProblem problem, in CornerMatrix normal, in Corners centre)
    {
        var limits = LimitsOf(problem).ToList();
        var prices = new double[limits.Count];
        var inverse = normal.Inverse();
        var floor = With(problem, normal, centre, inverse, limits, prices);
        Span<double> at = stackalloc double[4];
        for (var round = 0; round < Rounds && limits.Count > 0; round++)
        {
            var raised = false;
            for (var i = 0; i < prices.Length; i++)
            {
                floor.priced.Minimum(at, 4);
                var (slope, most) = limits[i];
                // The step that would meet this one limit exactly if nothing else moved.
                var price = Math.Max(0, prices[i] + 2 * (slope.Dot(new(at[0], at[1], at[2], at[3])) - most) / slope.Dot(inverse * slope));
                if (Math.Abs(price - prices[i]) < 1e-9 * (1 + price))
                    continue;
                (prices[i], raised) = (price, true);
                floor = With(problem, normal, centre, inverse, limits, prices);
            }
            if (!raised)
                break;
        }
        return floor;
    }

    /// <summary>
    /// The floor when the first <paramref name="free"/> corners are still open and the others turn as in
    /// <paramref name="at"/>; the open ones are set to where it is reached.
    /// </summary>
    public double Floor(Span<double> at, int free) => priced.Minimum(at, free) + constant;

    static HeightPrice With(PlanProblem problem, in CornerMatrix normal, in Corners centre, in CornerMatrix inverse,
        List<(Corners Slope, double Most)> limits, double[] prices)
    {
        var pull = default(Corners);
        for (var i = 0; i < prices.Length; i++)
            pull += prices[i] * limits[i].Slope;
        var shift = -0.5 * (inverse * pull);
        var constant = shift.Dot(normal * shift);
        for (var i = 0; i < prices.Length; i++)
            constant += prices[i] * (limits[i].Slope.Dot(centre + shift) - limits[i].Most);
        return new(new(normal, centre + shift, problem.Limits.LowestTurns, problem.Limits.HighestTurns), constant);
    }

    static IEnumerable<(Corners Slope, double Most)> LimitsOf(PlanProblem problem)
    {
        foreach (var corner in Corners.All.ToArray())
        {
            if (double.IsFinite(problem.Limits.HighestRise[corner]))
                yield return (problem.HeightsPerTurn[corner], problem.Limits.HighestRise[corner]);
            if (double.IsFinite(problem.Limits.LowestRise[corner]))
                yield return (-1 * problem.HeightsPerTurn[corner], -problem.Limits.LowestRise[corner]);
        }
    }
}
