namespace Daemon.Tests.Settling.Trials;

/// <summary>What kind of car rocks on the pads, and how it is set moving. The ranges are assumptions, none is published.</summary>
/// <param name="Name">For tables.</param>
/// <param name="Friction">5 to 80 N of dry friction in each corner.</param>
/// <param name="WalkedPast">People walk past now and then; each step shakes the car.</param>
/// <param name="Thrown">Released from 8 mm of heave and 4 mrad of pitch and roll, instead of being worked on.</param>
internal sealed record RockingKind(string Name, bool Friction, bool WalkedPast, bool Thrown)
{
    public static readonly RockingKind Linear = new("linear", Friction: false, WalkedPast: false, Thrown: false);
    public static readonly RockingKind WithFriction = new("friction", Friction: true, WalkedPast: false, Thrown: false);
    public static readonly RockingKind Workshop = new("workshop", Friction: true, WalkedPast: true, Thrown: false);
    public static readonly RockingKind HardRocking = new("hard rocking", Friction: false, WalkedPast: false, Thrown: true);

    /// <summary>Mains pick-up in the pads. At rates that fold it to a standstill (10 a second with 50 Hz) no filter can see it.</summary>
    public bool Hums { get; init; } = true;

    /// <summary>What the pads and cables do that ideal ones do not.</summary>
    public string Imperfections => "noise,quantisation,clock-offset,clock-drift,latency-batches" + (Hums ? ",hum" : "") + (Friction ? ",friction" : "");
}
