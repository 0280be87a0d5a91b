namespace Weighing.Tests.Settling.Scenarios;

/// <summary>What kind of spring car a scenario asks for.</summary>
/// <param name="Friction">5 to 80 N of dry friction in each corner.</param>
/// <param name="Asymmetric">Dampers that resist rebound up to 2.5 times as much as bump.</param>
/// <param name="Thrown">Released from 8 mm of heave and 4 mrad of pitch and roll, up or down, instead of being worked on; dampers follow the springs.</param>
/// <param name="RearToFront">Rear ride frequency over the front one: the more unlike, the more rocking shows in cross weight.</param>
/// <param name="Damping">Damping ratio of the body; null: 0.05 to 0.30.</param>
/// <param name="DamperSpread">Factor on each damper.</param>
/// <param name="SpringSpread">Factor on each spring.</param>
sealed record SpringCarKind(
    bool Friction, bool Asymmetric, bool Thrown, (double Low, double High) RearToFront,
    Func<Draw, double>? Damping, Func<Draw, double> DamperSpread, Func<Draw, double> SpringSpread)
{
    /// <summary>Worked on until t = 0, with friction.</summary>
    public static readonly SpringCarKind WithFriction = new(true, true, false, (.9, 1.25), null, _ => 1, _ => 1);

    public static readonly SpringCarKind WithoutFriction = WithFriction with { Friction = false };

    public static readonly SpringCarKind LightlyDamped = WithFriction with { Damping = _ => .05 };

    /// <summary>Rocking hard on unlike springs, no friction, damping in proportion to the spring but for 20 % up or down.</summary>
    public static readonly SpringCarKind HardRocking = new(false, false, true, (.6, 1.6),
        d => d.Uniform(.03, .25), d => d.Uniform(.8, 1.2), d => d.Uniform(.5, 1.5));
}
