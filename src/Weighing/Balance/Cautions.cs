namespace ScaleLink.Weighing.Balance;

/// <summary>What to say wherever the car leaves the ground or is moved by hand. Local rules and trained people come first.</summary>
static class Cautions
{
    /// <summary>Before an axle is lifted.</summary>
    public const string AxleLift =
        "A lifted car can fall and kill. Lift at the points made for it with gear rated for the load, on firm ground. " +
        "Set stands before anyone comes near; a jack alone holds nothing. Chock the wheels that stay down, both ways; brakes off and out of gear only once the chocks hold. " +
        "Nobody in, under or in front of the car while it is raised. Let people trained for it do the lifting, and follow local rules.";

    /// <summary>Before the car is bounced or rolled to settle it.</summary>
    public const string Settling = "Keep hands and feet clear of wheels, springs and pads while the car is bounced or rolled. Nobody under the car.";

    /// <summary>The same in a line that stays in sight once the whole was read.</summary>
    public const string SettlingLine = "Hands and feet clear; nobody under the car.";

    /// <summary>Before perches are turned.</summary>
    public const string Perches =
        "Turn perches with the wheel safely supported. Springs store energy: never unwind a perch past the end of its thread, and keep clear of a spring that can jump off its seat.";

    /// <summary>The same in a line.</summary>
    public const string PerchesLine = "Wheel supported; nobody under the car.";

    /// <summary>After perches were turned, before the car runs.</summary>
    public const string Track =
        "The car will handle differently. Before it runs: lock rings tight, springs seated, wheel nuts to torque, nothing touching through the whole travel. First laps gently, on a closed course, by the rules of the place.";

    /// <summary>The same in a line.</summary>
    public const string TrackLine = "Lock rings and wheel nuts before it runs.";

    /// <summary>Raising a car, which is no step of its own, and happens in every session.</summary>
    public const string Raising =
        "A raised car: stands on firm ground, wheels that stay down chocked. Nobody under a car that hangs on a jack. Never load a pad beyond its capacity. Local codes and licensed practice come first.";

    /// <summary>All that a work session can meet, in the order in which it meets it.</summary>
    public static IReadOnlyList<string> OfASession { get; } = [Raising, Settling, Perches, Track];

    /// <summary>On every sheet of results.</summary>
    public const string NotForTrade = "Not approved for trade or legal weighing. Setup figures are advice; whoever drives or releases the car decides, and tests it with care.";
}
