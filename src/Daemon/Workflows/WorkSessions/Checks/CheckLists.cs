using ScaleLink.Weighing.Cars;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Checks;

/// <summary>What is seen to before the baseline and before the end. Common practice of the trade, no published source.</summary>
internal static class CheckLists
{
    /// <summary>Key of the check whose answer changes what a turn does.</summary>
    public const string Bars = "bars_disconnected";

    /// <summary>Key of the check after which a reading verifies the bars.</summary>
    public const string BarsAgain = "bars_connected_again";

    /// <summary>Key of the check that such a reading answers.</summary>
    public const string BarsVerified = "bars_without_preload";

    private static readonly CheckItem[] Before =
    [
        new("tyre_pressures", "Tyre pressures set", "All four, cold, with one gauge: a soft tyre is a low corner and another rate.", "bar, LF RF LR RR"),
        new("rolling_circumference", "Rolling circumference measured", "Tape around each tread; left and right of an axle within 3 mm, or swap tyres first.", "mm, LF RF LR RR"),
        new("fuel", "Fuel as raced", "State how much; a full tank and an empty one stand differently.", "litres"),
        new("driver_mass", "Driver's mass in the seat", "The driver, or bags of the same mass in seat and footwell.", "kg"),
        new(Bars, "Bars disconnected", "One drop link off at each bar, so that neither holds the body. Skip it to weigh with bars connected: a turn then does less."),
        new("steering_straight", "Steering straight", "Wheel centred and tied; a steered wheel lifts a corner."),
        new("pads_zeroed", "Pads zeroed", "Empty, quiet pads: Health on the page, or scalelink zero."),
        new("pads_proved", "Pads calibrated with known masses", "Each pad against masses, near the load that it will carry."),
        new("patch_level", "Patch level", "A height measurement of the pads in effect, level or corrected: Patch on the page, or scalelink patch."),
    ];

    private static readonly CheckItem[] After =
    [
        new("lock_rings", "Lock rings tight", "At every perch that was turned; count the turns once more."),
        new(BarsAgain, "Bars connected again", "Adjust the link's length until its bolt slides in: no preload. Then settle and weigh once more."),
        new(BarsVerified, "No preload on the pads", "The reading with bars connected must be as the one without; weigh it here."),
        new("bump_and_droop", "Bump rubber and droop clearance", "At every corner that moved: the rubber clear at ride height, droop left, nothing touching through the travel."),
        new("alignment", "Alignment checked", "Toe and camber move with ride height."),
    ];

    /// <summary>Before the baseline.</summary>
    public static IReadOnlyList<CheckItem> Preparation(CarModel car, IReadOnlyList<string> leaveOut) => Of(Before, car, leaveOut);

    /// <summary>Before the end; those of the bars only when they were disconnected.</summary>
    public static IReadOnlyList<CheckItem> LastSteps(CarModel car, IReadOnlyList<string> leaveOut, bool barsWereOff) =>
        [.. Of(After, car, leaveOut).Where(c => barsWereOff || c.Key is not (BarsAgain or BarsVerified))];

    /// <summary>Every key that can be named.</summary>
    public static IEnumerable<string> Keys => Before.Concat(After).Select(c => c.Key);

    private static IReadOnlyList<CheckItem> Of(CheckItem[] all, CarModel car, IReadOnlyList<string> leaveOut)
    {
        var hasBars = car.FrontBar is not null || car.RearBar is not null;
        return [.. all.Where(c => !leaveOut.Contains(c.Key) && (hasBars || c.Key is not (Bars or BarsAgain or BarsVerified)))];
    }
}
