namespace ScaleLink.Weighing.Calibration;

/// <summary>Every refusal of proving, trimming, rotating and zeroing pads: code, text and mend in one place.</summary>
public static class CalibrationRefusals
{
    /// <summary>The reading still moves.</summary>
    public static readonly RefusalKind Unsettled = new("SL-301", "The pad is not at rest",
        "Step off, keep hands off the load, wait until the reading is settled, then take it again.");

    /// <summary>A converter is at the end of its range.</summary>
    public static readonly RefusalKind Saturated = new("SL-302", "A load cell reads at the end of its range",
        "Take load off at once. Check the cell's wiring and that the pad's capacity is not exceeded.");

    /// <summary>A cell repeats itself to the last count.</summary>
    public static readonly RefusalKind Frozen = new("SL-303", "A load cell does not answer",
        "Press on each corner of the pad in turn and look for the cell that stays still; check its cable and its mounting.");

    /// <summary>Another pad took the load.</summary>
    public static readonly RefusalKind WrongPad = new("SL-304", "The masses stand on another pad",
        "Move them to the pad that is being proved.");

    /// <summary>The load was to change and did not.</summary>
    public static readonly RefusalKind Duplicate = new("SL-305", "The load has not changed since the last point",
        "Place what the step asks for, then take the reading.");

    /// <summary>More mass, fewer counts.</summary>
    public static readonly RefusalKind NotMonotonic = new("SL-306", "The reading went the wrong way",
        "Compare the masses on the pad with the step. If they are right, a cell is wired in reverse or the platform touches something.");

    /// <summary>Too few counts to calibrate by.</summary>
    public static readonly RefusalKind SignalTooSmall = new("SL-307", "The signal is too small for the masses",
        "Check the converter's gain and the cells' wiring; the whole proof must cover many times the noise and the resolution.");

    /// <summary>The pad would be overloaded.</summary>
    public static readonly RefusalKind BeyondCapacity = new("SL-308", "The load is beyond the pad's capacity",
        "Take masses out of the step. Never load a pad beyond its capacity.");

    /// <summary>One reading disagrees with its repeats and the curve.</summary>
    public static readonly RefusalKind ReadingOff = new("SL-309", "One reading disagrees with the others",
        "Take that point again: nothing may lean on the masses or touch the platform.");

    /// <summary>Two labels seem exchanged.</summary>
    public static readonly RefusalKind MassesSwapped = new("SL-310", "Two masses seem to be exchanged",
        "Read the labels on the masses and compare them with the list of the step.");

    /// <summary>Pounds for kilograms, or the reverse.</summary>
    public static readonly RefusalKind WrongUnit = new("SL-311", "A mass seems to be given in the wrong unit",
        "Look at the mass: is it marked lb or kg? Correct it in the list of masses.");

    /// <summary>The proof drifted with temperature.</summary>
    public static readonly RefusalKind TemperatureMoved = new("SL-312", "The pad's temperature moved during the proof",
        "Let the pad come to the room's temperature, keep sun and heaters off it, and prove it again.");

    /// <summary>The pad does not stand level.</summary>
    public static readonly RefusalKind Tilted = new("SL-313", "The pad is tilted",
        "Level the pad before it is proved; a tilted cell reads less than the load.");

    /// <summary>The curve cannot be drawn from so few points.</summary>
    public static readonly RefusalKind TooFewPoints = new("SL-314", "There are too few points",
        "Add the points or runs that are named.");

    /// <summary>Too uncertain for what was asked.</summary>
    public static readonly RefusalKind UncertaintyNotReached = new("SL-315", "The uncertainty that was asked for is not reached",
        "Work on the largest term: better masses for masses, more runs for fit. Repeatability, hysteresis and zero return are the pad's own: look at its feet and its platform.");

    /// <summary>A step names a mass that nobody listed.</summary>
    public static readonly RefusalKind UnknownMass = new("SL-316", "A step names a mass that is not in the list",
        "Add the mass to the list, with its value and tolerance, or correct the label.");

    /// <summary>The class table has no such weight.</summary>
    public static readonly RefusalKind NoTolerance = new("SL-317", "There is no tolerance for this mass",
        "Give its tolerance from its certificate, or choose a nominal value of the class (1, 2 or 5 times a power of ten, 100 g to 50 kg).");

    /// <summary>Zero asked for with something on the pad.</summary>
    public static readonly RefusalKind ZeroLoaded = new("SL-318", "The pad is not empty, or its zero has moved far",
        "Take everything off the pad. If it is empty, look for a bent platform or a damaged cell, then prove the pad again.");

    /// <summary>Zeros wander.</summary>
    public static readonly RefusalKind ZeroDrifts = new("SL-319", "The zero drifts",
        "Let the pad warm up and zero it again; if it goes on, check cables and connectors for moisture and the cells for damage.");

    /// <summary>A cell would need an unlikely trim.</summary>
    public static readonly RefusalKind TrimOutOfRange = new("SL-320", "A load cell differs too much from the others",
        "Check the named cell: mounting, wiring, type. Trimming hides only the small differences between sound cells.");

    /// <summary>The corner-load test cannot separate the cells.</summary>
    public static readonly RefusalKind PositionsAlike = new("SL-321", "The places of the corner-load test are too much alike",
        "Put the same mass over each cell in turn, as near to the cell as the platform allows.");

    /// <summary>The placements of a rotation cannot separate pads from car.</summary>
    public static readonly RefusalKind PlacementsAlike = new("SL-322", "These placements cannot tell the pads from the car",
        "Move every pad on by one place in the order LF, RF, LR, RR each time, four placements in all.");

    /// <summary>The loads of the placements do not agree with each other.</summary>
    public static readonly RefusalKind CarMoved = new("SL-323", "The car's loads changed between the placements",
        "Change nothing on or in the car, settle it the same way each time, and weigh the odd placement again.");

    /// <summary>Ballast on the pad was never compared with known masses.</summary>
    public static readonly RefusalKind BallastUndetermined = new("SL-324", "Ballast was not compared with known masses",
        "Read the ballast by itself and again with the known masses on top.");

    /// <summary>The load is far from what was asked for.</summary>
    public static readonly RefusalKind UnexpectedLoad = new("SL-325", "The pad does not carry what the step asks for",
        "Compare the masses on the pad with the step. If they are right, correct the starting calibration.");

    /// <summary>Not the time for this.</summary>
    public static readonly RefusalKind OutOfStep = new("SL-326", "This cannot be done at this stage of the proof",
        "Do what the present step asks for, go back a step, or abandon the proof.");

    /// <summary>The new proof disagrees with the last one.</summary>
    public static readonly RefusalKind Shifted = new("SL-327", "The pad has shifted since its last proof",
        "Find out why before you trust either: a hit, an overload, a changed cell or cable, other masses. Readings since the last proof are doubtful.");

    /// <summary>One mass is not what it says.</summary>
    public static readonly RefusalKind MassOff = new("SL-328", "A mass is not what its label says",
        "Weigh the mass elsewhere or leave it out.");

    /// <summary>A starting calibration that cannot be.</summary>
    public static readonly RefusalKind BadStart = new("SL-329", "The starting calibration makes no sense",
        "Give kilograms per count, not zero, and its relative uncertainty, above 0 and below 1, from the cells' data sheet.");

    /// <summary>Neither line nor curve describes the pad.</summary>
    public static readonly RefusalKind ShapeUnknown = new("SL-330", "No line or curve describes this pad",
        "Look for a foot in the air, a platform that touches its frame, or a cell near its limit, and prove the pad again.");

    /// <summary>The highest load is a small part of the capacity.</summary>
    public static readonly RefusalKind RangeTooShort = new("SL-331", "The proof covers too little of the pad's capacity",
        "Add masses, or build up with ballast in place of the masses that you do not own.");

    /// <summary>The pad as read is not the pad as planned.</summary>
    public static readonly RefusalKind OtherPad = new("SL-332", "The reading does not fit this pad",
        "Check which pad is connected: its number of load cells is not the one that the proof began with.");

    /// <summary>The first zero of a pad, and it reads like a loaded one.</summary>
    public static readonly RefusalKind FirstZeroLoaded = new("SL-333", "The pad has no earlier zero to compare with, and does not read like an empty one",
        "Take everything off the pad. If it is empty, say so with the reason: a heavy platform, say, or an amplifier with a large offset.");

    /// <summary>The loads of two placements cannot be compared.</summary>
    public static readonly RefusalKind Recalibrated = new("SL-334", "A pad is weighed with another calibration than at the first placement",
        "What a pad weighs with must go with it: move its kg_per_count to the block of its new corner, or readopt the calibration of then; otherwise begin anew.");

    /// <summary>The pads were moved and not zeroed.</summary>
    public static readonly RefusalKind NotZeroedAnew = new("SL-335", "A pad was not zeroed after it was moved",
        "Lift the car, zero the empty pads in their new places, lower the car and settle it, then record again.");

    /// <summary>Not the four pads of the first placement.</summary>
    public static readonly RefusalKind OtherPads = new("SL-336", "These are not the same four pads",
        "Put the four pads of the first placement under the car, or begin anew.");

    /// <summary>The whole catalogue, in the order of the codes.</summary>
    public static IReadOnlyList<RefusalKind> All { get; } =
    [
        Unsettled, Saturated, Frozen, WrongPad, Duplicate, NotMonotonic, SignalTooSmall, BeyondCapacity, ReadingOff,
        MassesSwapped, WrongUnit, TemperatureMoved, Tilted, TooFewPoints, UncertaintyNotReached, UnknownMass, NoTolerance,
        ZeroLoaded, ZeroDrifts, TrimOutOfRange, PositionsAlike, PlacementsAlike, CarMoved, BallastUndetermined,
        UnexpectedLoad, OutOfStep, Shifted, MassOff, BadStart, ShapeUnknown, RangeTooShort, OtherPad,
        FirstZeroLoaded, Recalibrated, NotZeroedAnew, OtherPads,
    ];
}
