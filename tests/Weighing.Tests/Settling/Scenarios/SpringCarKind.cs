namespace Weighing.Tests.Settling.Scenarios;

/// <summary>What kind of spring car a scenario asks for.</summary>
/// <param name="Friction">5 to 80 N of dry friction in each corner.</param>
/// <param name="Asymmetric">Dampers that resist rebound up to 2.5 times as much as bump.</param>
/// <param name="Thrown">Released from up to 8 mm of heave and 4 mrad of pitch and roll, instead of being worked on.</param>
/// <param name="Damping">Damping ratio of the body; null: 0.05 to 0.30.</param>
/// <param name="DamperSpread">Factor on each damper.</param>
sealed record SpringCarKind(bool Friction, bool Asymmetric, bool Thrown, Func<Draw, double>? Damping, Func<Draw, double> DamperSpread)
{
    /// <summary>Worked on until t = 0, with friction.</summary>
    public static readonly SpringCarKind WithFriction = new(true, true, false, null, _ => 1);

    public static readonly SpringCarKind WithoutFriction = WithFriction with { Friction = false };

    public static readonly SpringCarKind LightlyDamped = WithFriction with { Damping = _ => .05 };

    /// <summary>Rocking hard, no friction, each damper off by up to 20 %.</summary>
    public static readonly SpringCarKind HardRocking = new(false, false, true, d => d.Uniform(.03, .25), d => d.Uniform(.8, 1.2));
}
