// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What is wrong with the daemon's record.</summary>
public static class LedgerCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("The ledger", "What is wrong with the daemon's record.");

    public static readonly Code LedgerDamaged = Area.Declare(361, "The ledger was damaged and has been rescued as far as it goes", "Look at the calibrations and zeros in effect before you weigh; restore a backup if there is one.");
    public static readonly Code LedgerUnopenable = Area.Declare(362, "The ledger cannot be opened", "See that its folder is there, can be written by the daemon, and has room on its disk.");
    public static readonly Code EntryLeftOut = Area.Declare(363, "An entry of the ledger cannot be read and is left out", "Look at what it was about before you rely on it; a newer daemon may be able to read it.");
    public static readonly Code LedgerHeld = Area.Declare(364, "Another daemon works on this ledger", "Stop the one or the other, or give each a ledger of its own.");
    public static readonly Code StepUnwritten = Area.Declare(365, "A step could not be written to the ledger and was not taken", "Make room, or end the other program, as the message says; then take the step again.");
    public static readonly Code NothingToTakeOver = Area.Declare(366, "There is nothing behind a damage of the ledger that could be taken over", "Start the daemon as usual.");
    public static readonly Code EntriesBehindDamage = Area.Declare(367, "Entries behind a damage of the ledger hold by themselves and are not counted", "End the daemon and run it once with --take-over and your name, if they are to count.");
    public static readonly Code EntriesUnchained = Area.Declare(368, "Entries that were taken over from behind a damage count, and nothing ties them to those before it", "Look at what they say before you rely on it.");
    public static readonly Code StepOvertaken = Area.Declare(565, "Somebody else has taken a step meanwhile", "Look at it again, then decide.");
}
