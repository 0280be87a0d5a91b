namespace CarOnPads.Physics;

/// <summary>
/// Where the car rests, by Newton's method on the seven force balances: no waiting, no damping, no time. The forces
/// are piecewise linear (a tyre lifts off, a spring goes slack, a stop touches, friction slips), so the method ends
/// on the exact answer once it has found the right pieces. Friction and scrub act as springs about the state they are
/// in, up to their limits.
/// </summary>
static class Equilibrium
{
    const int Size = 7;
    const int MostIterations = 2000;
    const double Tolerance = 1e-7;

    // A slack wheel has no stiffness of its own: 1 N/m keeps the system solvable without moving the answer.
    const double LeastStiffening = 1;
    const double MostStiffening = 1e9;

    /// <summary>
    /// The motion at rest, starting the search from <paramref name="from"/>: rates zero, <see cref="Motion.Load"/> the
    /// static pad loads in N.
    /// </summary>
    /// <exception cref="InvalidOperationException">No rest was found: the car would fall over.</exception>
    public static Motion Of(in Motion from, Chassis chassis, SprungMass body, in Surroundings surroundings)
    {
        var balance = new ForceBalance(from, chassis, body, surroundings);
        var q = new[] { from.Heave, from.Pitch, from.Roll, from.Hub[0], from.Hub[1], from.Hub[2], from.Hub[3] };
        balance.Evaluate(q);
        var left = LeftOver(balance);
        var stiffening = LeastStiffening;
        for (var iteration = 0; iteration < MostIterations && left > Tolerance; iteration++)
        {
            // A step that crosses too many pieces makes things worse; a stiffer car takes a shorter one.
            var next = Step(q, balance, stiffening);
            balance.Evaluate(next);
            var nextLeft = LeftOver(balance);
            if (nextLeft < left || stiffening >= MostStiffening)
            {
                (q, left) = (next, nextLeft);
                stiffening = Math.Max(LeastStiffening, stiffening / 30);
                continue;
            }

            stiffening *= 10;
            balance.Evaluate(q);
        }

        return left <= Tolerance
            ? balance.AtRest(q)
            : throw new InvalidOperationException($"The car finds no rest: {left:g3} N are left over. Is it pushed over or jacked too far?");
    }

    static double[] Step(double[] q, ForceBalance balance, double stiffening)
    {
        var step = (double[])balance.Residual.Clone();
        var stiffness = (double[,])balance.Stiffness.Clone();
        for (var i = 0; i < Size; i++)
            stiffness[i, i] += stiffening;
        LinearSystem.Solve(stiffness, step);
        for (var i = 0; i < Size; i++)
            step[i] += q[i];
        return step;
    }

    static double LeftOver(ForceBalance balance) => Math.Sqrt(balance.Residual.Sum(r => r * r));
}
