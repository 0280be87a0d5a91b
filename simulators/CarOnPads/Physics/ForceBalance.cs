namespace CarOnPads.Physics;

/// <summary>
/// Static forces and stiffness of the car at one position q = (heave, pitch, roll, four hubs). Written apart from
/// <see cref="CarDynamics"/> on purpose: each checks the other.
/// </summary>
sealed class ForceBalance(Motion origin, Chassis chassis, SprungMass body, Surroundings around)
{
    const int Size = 7;
    Four _load;
    Four _friction;
    Four _scrub;

    /// <summary>Generalised force left over, N and N m.</summary>
    public double[] Residual { get; } = new double[Size];

    /// <summary>Minus its derivative.</summary>
    public double[,] Stiffness { get; } = new double[Size, Size];

    public void Evaluate(double[] q)
    {
        Array.Clear(Residual);
        Array.Clear(Stiffness);
        Weigh(q);
        for (var i = 0; i < 4; i++)
        {
            Tyre(q, i);
            Strut(q, i);
            Jack(q, i);
        }

        if (around.FrontBar)
            Bar(q, 0, chassis.FrontBar, chassis.FrontBarIdle);
        if (around.RearBar)
            Bar(q, 2, chassis.RearBar, chassis.RearBarIdle);
    }

    public Motion AtRest(double[] q) => new()
    {
        Heave = q[0],
        Pitch = q[1],
        Roll = q[2],
        Hub = Four.Of(q[3], q[4], q[5], q[6]),
        Friction = _friction,
        Scrub = _scrub,
        Load = _load,
    };

    void Weigh(double[] q)
    {
        var g = chassis.Gravity;
        var lean = g * (body.MomentHeight + chassis.UnsprungHeightMoment);
        Residual[0] = -body.Mass * g;
        Residual[1] = g * body.MomentX + lean * q[1];
        Residual[2] = -g * body.MomentY + lean * q[2];
        Stiffness[1, 1] = -lean;
        Stiffness[2, 2] = -lean;
        for (var i = 0; i < 4; i++)
            Residual[3 + i] = -chassis.Stations[i].UnsprungMass * g;
    }

    void Tyre(double[] q, int i)
    {
        var rate = chassis.Stations[i].TyreRate;
        _load[i] = Math.Max(0, rate * (around.Ground[i] - q[3 + i]));
        Residual[3 + i] += _load[i];
        if (_load[i] > 0)
            Stiffness[3 + i, 3 + i] += rate;
    }

    void Strut(double[] q, int i)
    {
        var at = chassis.Stations[i];
        var compression = Compression(q, i);
        var moved = compression - OriginalCompression(i);
        var (force, stiffness) = Stops.Travel(at, compression);

        var spring = at.Preload + at.WheelRate * (compression + around.FreeLength[i]);
        if (spring > 0)
            (force, stiffness) = (force + spring, stiffness + at.WheelRate);

        var (friction, frictionRate) = around.Friction
            ? Rubbing(origin.Friction[i], at.FrictionRate, moved, at.FrictionLimit)
            : (0, 0);
        var (scrub, scrubRate) = around.Scrub
            ? Rubbing(origin.Scrub[i], at.ScrubRate, moved, at.ScrubGrip * _load[i])
            : (0, 0);
        _friction[i] = friction;
        _scrub[i] = scrub;

        force += friction + scrub;
        stiffness += frictionRate + scrubRate;
        Span<double> direction = stackalloc double[Size];
        direction[0] = -1;
        direction[1] = at.X;
        direction[2] = -at.Y;
        direction[3 + i] = 1;
        Apply(direction, -force, stiffness);
        Residual[0] -= around.Push[i];
        Residual[1] += at.X * around.Push[i];
        Residual[2] -= at.Y * around.Push[i];
    }

    void Bar(double[] q, int left, double rate, double idle)
    {
        var difference = Compression(q, left) - Compression(q, left + 1) - idle;
        var l = chassis.Stations[left];
        var r = chassis.Stations[left + 1];
        Span<double> direction = stackalloc double[Size];
        direction[1] = l.X - r.X;
        direction[2] = r.Y - l.Y;
        direction[3 + left] = 1;
        direction[4 + left] = -1;
        Apply(direction, -rate * difference, rate);
    }

    void Jack(double[] q, int i)
    {
        var x = Stops.JackReach * chassis.Stations[i].X;
        var y = Stops.JackReach * chassis.Stations[i].Y;
        var squeeze = around.Jack[i] - (q[0] - x * q[1] + y * q[2]);
        if (squeeze > 0)
            Apply([1, -x, y, 0, 0, 0, 0], Stops.JackRate * squeeze, Stops.JackRate);
    }

    void Apply(ReadOnlySpan<double> direction, double force, double stiffness)
    {
        for (var row = 0; row < Size; row++)
        {
            Residual[row] += direction[row] * force;
            for (var column = 0; column < Size; column++)
                Stiffness[row, column] += stiffness * direction[row] * direction[column];
        }
    }

    double Compression(double[] q, int i)
    {
        var at = chassis.Stations[i];
        return q[3 + i] - at.Rest - (q[0] - at.X * q[1] + at.Y * q[2]);
    }

    double OriginalCompression(int i)
    {
        var at = chassis.Stations[i];
        return origin.Hub[i] - at.Rest - origin.BodyAt(at.X, at.Y);
    }

    static (double Force, double Rate) Rubbing(double held, double rate, double moved, double limit)
    {
        var force = held + rate * moved;
        return Math.Abs(force) < limit ? (force, rate) : (Math.Clamp(force, -limit, limit), 0);
    }
}
