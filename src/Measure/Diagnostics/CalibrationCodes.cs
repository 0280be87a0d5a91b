// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What a calibration procedure, a zero or a pad interchange is refused for.</summary>
public static class CalibrationCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("Calibration, zeros and pad interchange", "What a calibration procedure, a zero or a pad interchange is refused for.");

    public static readonly Code Unsettled = Area.Declare(301, "The pad is not at rest", "Step off, keep hands off the load, wait until the reading is settled, then take it again.");
    public static readonly Code CellSaturated = Area.Declare(302, "A load cell reads at the end of its range", "Take load off at once. Check the cell's wiring and that the pad's capacity is not exceeded.");
    public static readonly Code CellFrozen = Area.Declare(303, "A load cell does not answer", "Press on each corner of the pad in turn and look for the cell that stays still; check its cable and its mounting.");
    public static readonly Code MassesOnOtherPad = Area.Declare(304, "The masses stand on another pad", "Move them to the pad that is being calibrated.");
    public static readonly Code LoadUnchanged = Area.Declare(305, "The load has not changed since the last point", "Place what the step asks for, then take the reading.");
    public static readonly Code NotMonotonic = Area.Declare(306, "The reading went the wrong way", "Compare the masses on the pad with the step. If they are right, a cell is wired in reverse or the platform touches something.");
    public static readonly Code SignalTooSmall = Area.Declare(307, "The signal is too small for the masses", "Check the converter's gain and the cells' wiring; the whole calibration must cover many times the noise and the resolution.");
    public static readonly Code BeyondCapacity = Area.Declare(308, "The load is beyond the pad's capacity", "Take masses out of the step. Never load a pad beyond its capacity.");
    public static readonly Code ReadingOff = Area.Declare(309, "One reading disagrees with the others", "Take that point again: nothing may lean on the masses or touch the platform.");
    public static readonly Code MassesExchanged = Area.Declare(310, "Two masses seem to be exchanged", "Read the labels on the masses and compare them with the list of the step.");
    public static readonly Code WrongUnit = Area.Declare(311, "A mass seems to be given in the wrong unit", "Look at the mass: is it marked lb or kg? Correct it in the list of masses.");
    public static readonly Code TemperatureMoved = Area.Declare(312, "The pad's temperature moved during the calibration", "Let the pad come to the room's temperature, keep sun and heaters off it, and calibrate it again.");
    public static readonly Code PadTilted = Area.Declare(313, "The pad is tilted", "Level the pad before it is calibrated; a tilted cell reads less than the load.");
    public static readonly Code TooFewPoints = Area.Declare(314, "There are too few points", "Add the points or runs that are named.");
    public static readonly Code UncertaintyNotReached = Area.Declare(315, "The uncertainty that was asked for is not reached", "Work on the largest term: better masses for masses, more runs for fit. Repeatability, hysteresis and zero return are the pad's own: look at its feet and its platform.");
    public static readonly Code MassUnknown = Area.Declare(316, "A step names a mass that is not in the list", "Add the mass to the list, with its value and tolerance, or correct the label.");
    public static readonly Code MassWithoutTolerance = Area.Declare(317, "There is no tolerance for this mass", "Give its tolerance from its certificate, or choose a nominal value of the class (1, 2 or 5 times a power of ten, 100 g to 50 kg).");
    public static readonly Code ZeroLoaded = Area.Declare(318, "The pad is not empty, or its zero has moved far", "Take everything off the pad. If it is empty, look for a bent platform or a damaged cell, then calibrate the pad again.");
    public static readonly Code ZeroDrifts = Area.Declare(319, "The zero drifts", "Let the pad warm up and zero it again; if it goes on, check cables and connectors for moisture and the cells for damage.");
    public static readonly Code CellTrimTooLarge = Area.Declare(320, "A load cell differs too much from the others", "Check the named cell: mounting, wiring, type. Trimming hides only the small differences between sound cells.");
    public static readonly Code PlacesAlike = Area.Declare(321, "The places of the corner-load test are too much alike", "Put the same mass over each cell in turn, as near to the cell as the platform allows.");
    public static readonly Code PlacementsAlike = Area.Declare(322, "These placements cannot tell the pads from the car", "Move every pad on by one place in the order LF, RF, LR, RR each time, four placements in all.");
    public static readonly Code CarChanged = Area.Declare(323, "The car's loads changed between the placements", "Change nothing on or in the car, settle it the same way each time, and weigh the odd placement again.");
    public static readonly Code BallastNotCompared = Area.Declare(324, "Ballast was not compared with known masses", "Read the ballast by itself and again with the known masses on top.");
    public static readonly Code UnexpectedLoad = Area.Declare(325, "The pad does not carry what the step asks for", "Compare the masses on the pad with the step. If they are right, correct the nominal sensitivity.");
    public static readonly Code OutOfStep = Area.Declare(326, "This cannot be done at this stage of the calibration", "Do what the present step asks for, go back a step, or abandon the calibration.");
    public static readonly Code PadShifted = Area.Declare(327, "The pad has shifted since its last calibration", "Find out why before you trust either: a hit, an overload, a changed cell or cable, other masses. Readings since the last calibration are uncertain.");
    public static readonly Code MassOff = Area.Declare(328, "A mass is not what its label says", "Weigh the mass elsewhere or leave it out.");
    public static readonly Code StartUnusable = Area.Declare(329, "The nominal sensitivity makes no sense", "Give kilograms per count, not zero, and its relative uncertainty, above 0 and below 1, from the cells' data sheet.");
    public static readonly Code ShapeUnknown = Area.Declare(330, "No line or curve describes this pad", "Look for a foot in the air, a platform that touches its frame, or a cell near its limit, and calibrate the pad again.");
    public static readonly Code RangeTooShort = Area.Declare(331, "The calibration covers too little of the pad's capacity", "Add masses, or build up with ballast in place of the masses that you do not own.");
    public static readonly Code ReadingOfOtherPad = Area.Declare(332, "The reading does not fit this pad", "Check which pad is connected: its number of load cells is not the one that the calibration began with.");
    public static readonly Code FirstZeroLoaded = Area.Declare(333, "The pad has no earlier zero to compare with, and does not read like an empty one", "Take everything off the pad. If it is empty, say so with the reason: a heavy platform, say, or an amplifier with a large offset.");
    public static readonly Code CalibrationChanged = Area.Declare(334, "A pad is weighed with another calibration than at the first placement", "What a pad weighs with must go with it: move its kg_per_count to the block of its new corner, or readopt the calibration of then; otherwise begin anew.");
    public static readonly Code NotZeroedAnew = Area.Declare(335, "A pad was not zeroed after it was moved", "Lift the car, zero the empty pads in their new places, lower the car and settle it, then record again.");
    public static readonly Code OtherPads = Area.Declare(336, "These are not the same four pads", "Put the four pads of the first placement under the car, or begin anew.");
    public static readonly Code CalibrationRunning = Area.Declare(351, "This pad is being calibrated already", "Go on with that calibration, or abandon it first.");
    public static readonly Code NoCalibrationRunning = Area.Declare(352, "This pad is not being calibrated", "Start a calibration.");
    public static readonly Code CalibrationNotFound = Area.Declare(353, "There is no such calibration", "List the calibrations, and name one by its number.");
    public static readonly Code CalibrationInEffect = Area.Declare(354, "This calibration is in effect already", "Choose another one.");
    public static readonly Code NameOrReasonMissing = Area.Declare(355, "A name or a reason is missing", "Enter who, and why where it is asked for: both go into the ledger.");
    public static readonly Code NoInterchangeRunning = Area.Declare(356, "No pad interchange is under way", "Begin with a weighing: scalelink calibrations pad-interchange record.");
}
