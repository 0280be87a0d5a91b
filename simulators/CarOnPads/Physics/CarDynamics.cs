namespace CarOnPads.Physics;

/// <summary>
/// Seven degrees of freedom: heave, pitch and roll of a rigid body, and four unsprung masses. Semi-implicit Euler,
/// which keeps a static equilibrium exactly. Angles are small; the overturning of a leaning car is kept (first order).
/// </summary>
static class CarDynamics
{
    /// <summary>The fixed step, s.</summary>
    public const double Step = 0.0005;

    /// <summary>Length over which a rolling tyre forgets its scrub, m (about a tyre radius: common practice).</summary>
    const double RelaxationLength = 0.3;

    /// <summary>Advances the motion by one step.</summary>
    public static void Advance(ref Motion m, Chassis chassis, SprungMass body, in Surroundings s)
    {
        var g = chassis.Gravity;
        var lean = g * (body.MomentHeight + chassis.UnsprungHeightMoment);
        var force = -body.Mass * g;
        var pitch = body.MomentX * g + lean * m.Pitch;
        var roll = -body.MomentY * g + lean * m.Roll;

        var travel = new Four();
        var stations = chassis.Stations;
        for (var i = 0; i < 4; i++)
            travel[i] = m.Hub[i] - stations[i].Rest - m.BodyAt(stations[i].X, stations[i].Y);
        var frontBar = s.FrontBar ? chassis.FrontBar * (travel[0] - travel[1] - chassis.FrontBarIdle) : 0;
        var rearBar = s.RearBar ? chassis.RearBar * (travel[2] - travel[3] - chassis.RearBarIdle) : 0;

        for (var i = 0; i < 4; i++)
        {
            var at = stations[i];
            var rate = m.HubRate[i] - m.BodyRateAt(at.X, at.Y);
            Rub(ref m, i, at, rate, s);
            var bar = i < 2 ? frontBar : rearBar;
            var strut = Math.Max(0, at.Preload + at.WheelRate * (travel[i] + s.FreeLength[i]))
                + rate * (rate > 0 ? at.Bump : at.Rebound)
                + Stops.Travel(at, travel[i]).Force
                + ((i & 1) == 0 ? bar : -bar)
                + m.Friction[i] + m.Scrub[i];

            m.Load[i] = TyreForce(at, s.Ground[i] - m.Hub[i], m.HubRate[i]);
            m.HubRate[i] += Step * ((m.Load[i] - strut) / at.UnsprungMass - g);

            var up = strut - s.Push[i];
            force += up;
            pitch -= at.X * up;
            roll += at.Y * up;

            var jack = JackForce(m, at, s.Jack[i]);
            force += jack;
            pitch -= Stops.JackReach * at.X * jack;
            roll += Stops.JackReach * at.Y * jack;
        }

        var (a, b, c) = body.Inverse.Times(force, pitch, roll);
        m.HeaveRate += Step * a;
        m.PitchRate += Step * b;
        m.RollRate += Step * c;
        m.Heave += Step * m.HeaveRate;
        m.Pitch += Step * m.PitchRate;
        m.Roll += Step * m.RollRate;
        for (var i = 0; i < 4; i++)
            m.Hub[i] += Step * m.HubRate[i];
    }

    // Elasto-plastic: a spring that slips at its limit. The scrub's limit follows the load on the tyre.
    static void Rub(ref Motion m, int i, WheelStation at, double rate, in Surroundings s)
    {
        m.Friction[i] = s.Friction
            ? Math.Clamp(m.Friction[i] + at.FrictionRate * rate * Step, -at.FrictionLimit, at.FrictionLimit)
            : 0;
        if (!s.Scrub)
        {
            m.Scrub[i] = 0;
            return;
        }

        var limit = at.ScrubGrip * m.Load[i];
        var forgetting = s.Rolling * Step / RelaxationLength;
        var held = m.Scrub[i] + at.ScrubRate * rate * Step + forgetting * (s.ScrubAfterRolling[i] - m.Scrub[i]);
        m.Scrub[i] = Math.Clamp(held, -limit, limit);
    }

    static double TyreForce(WheelStation at, double depth, double hubRate) =>
        depth > 0 ? Math.Max(0, at.TyreRate * depth - at.TyreDamping * hubRate) : 0;

    static double JackForce(in Motion m, WheelStation at, double head)
    {
        var x = Stops.JackReach * at.X;
        var y = Stops.JackReach * at.Y;
        var squeeze = head - m.BodyAt(x, y);
        return squeeze > 0
            ? Math.Max(0, Stops.JackRate * squeeze - Stops.JackDamping * m.BodyRateAt(x, y))
            : 0;
    }
}
