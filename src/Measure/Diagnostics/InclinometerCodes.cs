// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What keeps the zero of a pad's inclinometer from being taken.</summary>
public static class InclinometerCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("Inclinometer zeros", "What keeps the zero of a pad's inclinometer from being taken.");

    public static readonly Code TiltNotRead = Area.Declare(546, "A pad does not say its tilt", "Give the pad an inclinometer, or name one under pads.tilt in the bay file.");
    public static readonly Code PadLoaded = Area.Declare(547, "A pad whose tilt is to be read is loaded", "Take the car or the masses off it. Zero the pad if it is empty.");
    public static readonly Code PadNotAtRest = Area.Declare(548, "The tilt of a pad is not at rest", "Put it down, hands off, and wait; keep off the floor round it.");
    public static readonly Code TurnNotSeen = Area.Declare(549, "Whether a pad was turned cannot be known: it reads the same, as it does on level ground too", "Turn it, or say that it was turned.");
    public static readonly Code NotTurned = Area.Declare(553, "A pad was not turned between two readings of its tilt", "Turn it by half a turn, on the same marks.");
    public static readonly Code ZeroTooLarge = Area.Declare(554, "The zero of a pad's inclinometer is larger than a mounting error", "Look how the sensor is mounted, then test again.");
    public static readonly Code OutOfStep = Area.Declare(555, "There is no such step of a reversal test now", "Look at the test again; begin one with a reading.");
}
