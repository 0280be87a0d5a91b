// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What a work session finds, and what it refuses.</summary>
public static class SessionCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("Work sessions", "What a work session finds, and what it refuses.");

    public static readonly Code FormatMissing = Area.Declare(535, "No format is given", "Ask for CSV, JSON or HTML.");
    public static readonly Code StepDisagrees = Area.Declare(550, "A step did not do what it should have done", "Look at the likely causes; weigh again, or stand by what was done.");
    public static readonly Code UnrecordedChange = Area.Declare(551, "The settled loads changed although no step was recorded", "Record the turn or what else was changed.");
    public static readonly Code StepUnusable = Area.Declare(552, "A step asks for a perch that does not turn, or a number that is not usable", "Give turns as numbers, and none for a fixed perch.");
    public static readonly Code NoSession = Area.Declare(560, "No session is open in this bay", "Start one: Work session on the page, or scalelink work-session start.");
    public static readonly Code SessionOpen = Area.Declare(561, "A session is open in this bay already", "Go on with it, finish it, or abandon it.");
    public static readonly Code NotInThisState = Area.Declare(562, "The session waits for something else", "Do that first.");
    public static readonly Code NotReady = Area.Declare(563, "The reading is not ready for the record", "Hands off the car and the pads; wait until it has been settled for a moment.");
    public static readonly Code NoSuchCheck = Area.Declare(564, "There is no such check", "Name one of the checks that the message lists.");
    public static readonly Code NotFinished = Area.Declare(566, "The session cannot be finished yet", "Do or skip what is open, with a reason.");
    public static readonly Code SessionNotFound = Area.Declare(567, "There is no such session", "See which there are: scalelink work-session list.");
    public static readonly Code SameRest = Area.Declare(568, "The car has not moved since the last weighing: it would be the same one again", "Settle the car anew (roll or bounce), hands off, then weigh.");
    public static readonly Code InputUnusable = Area.Declare(569, "A number, a name or a reason of the step is missing or not usable", "Correct what the message names.");
    public static readonly Code BarsPreloaded = Area.Declare(570, "With the bars connected cross weight moves more than settling explains", "A drop link is preloaded: adjust its length until the bolt slides in, settle and weigh again.");
    public static readonly Code PadsNotCalibrated = Area.Declare(571, "Pads are not calibrated with known masses", "Calibrate them, or skip the check: their loads are then marked.");
    public static readonly Code ZeroMissing = Area.Declare(572, "A pad has no zero, or an old one", "Empty the pads and zero them.");
    public static readonly Code PatchNotLevel = Area.Declare(573, "The patch is not level, or was not measured", "Shim the pads, switch the corrections on, or skip the check with the reason.");
    public static readonly Code HardToCompare = Area.Declare(574, "Two sessions are hard to compare", "Compare what the message says still compares.");
    public static readonly Code HeightsWanted = Area.Declare(575, "The car has targets for ride heights, but none were measured", "Measure all four and enter them.");
    public static readonly Code ChangeUnnamed = Area.Declare(576, "The settled car stands elsewhere and nothing was recorded", "Record what was turned or changed.");
    public static readonly Code InclinometerUntested = Area.Declare(577, "Tilt is corrected by an inclinometer whose zero was never tested", "Turn each pad round once: Patch on the page, or scalelink patch inclinometer-zero.");
    public static readonly Code SeenOtherwise = Area.Declare(578, "A check is ticked that the bay sees otherwise", "See to it, and it ticks itself; or leave it out with the reason.");
}
