namespace CarOnPads.Physics;

/// <summary>
/// Where the car rests, by Newton's method on the seven force balances: no waiting, no damping, no time. The forces
/// are piecewise linear (a tyre lifts off, a spring goes slack, a stop touches, friction slips), so the method ends
/// on the exact answer once it has found the right pieces. Friction and scrub act as springs about the state they are
/// in, up to their limits.
/// </summary>
public static class Equilibrium
{
    private const int Size = 7;
    private const int MostIterations = 400;
    private const double LongestMove = 0.05;
    private const double Tolerance = 1e-7;

    /// <summary>
    /// The motion at rest, starting the search from <paramref name="from"/>: rates zero, <see cref="Motion.Load"/> the
    /// static pad loads in N.
    /// </summary>
    /// <exception cref="InvalidOperationException">No rest was found: the car would fall over.</exception>
    public static Motion Of(in Motion from, Chassis chassis, SprungMass body, in Surroundings surroundings)
    {
        var balance = new ForceBalance(from, chassis, body, surroundings);
        var q = new[] { from.Heave, from.Pitch, from.Roll, from.Hub[0], from.Hub[1], from.Hub[2], from.Hub[3] };
        for (var iteration = 0; iteration < MostIterations; iteration++)
        {
            balance.Evaluate(q);
            if (balance.Residual.Max(Math.Abs) < Tolerance)
                return balance.AtRest(q);
            Move(q, balance, iteration);
        }

        throw new InvalidOperationException(
            $"The car finds no rest: {balance.Residual.Max(Math.Abs):g3} N are left over. Is it pushed over or jacked too far?");
    }

    private static void Move(double[] q, ForceBalance balance, int iteration)
    {
        var step = (double[])balance.Residual.Clone();
        var stiffness = (double[,])balance.Stiffness.Clone();
        for (var i = 0; i < Size; i++)
            stiffness[i, i] += 1; // a slack wheel has no stiffness of its own; 1 N/m keeps the system solvable
        LinearSystem.Solve(stiffness, step);

        // Long steps overshoot several pieces at once; late half steps break a cycle between two of them.
        var longest = step.Max(Math.Abs);
        var scale = longest > LongestMove ? LongestMove / longest : 1;
        if (iteration > 60)
            scale *= 0.5;
        for (var i = 0; i < Size; i++)
            q[i] += scale * step[i];
    }
}
