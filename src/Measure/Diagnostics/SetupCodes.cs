// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What comes between while a bay is set up.</summary>
public static class SetupCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("Setting up", "What comes between while a bay is set up.");

    public static readonly Code Searching = Area.Declare(480, "The ports are being searched", "Wait until the search is over.");
    public static readonly Code NoAdapter = Area.Declare(481, "No serial adapter is plugged in", "Plug the adapters of the pads in and search again, or name the ports.");
    public static readonly Code DeviceUnknown = Area.Declare(482, "No such device was found", "Take one of those that were found, or search again.");
    public static readonly Code TwoLoaded = Area.Declare(483, "Two pads were loaded at once", "Step on one pad alone, and off again.");
    public static readonly Code OtherCorner = Area.Declare(484, "The pad that was stepped on stands under another corner", "Step on the pad that is asked for, or give the corners anew.");
    public static readonly Code CornerWithoutDevice = Area.Declare(485, "A corner has no device", "Step on its pad and off again, or say which device stands there.");
    public static readonly Code CapacityMissing = Area.Declare(486, "What the pads may carry is not known", "Give what is written on the pad, or the smallest of its load cells' capacities.");
    public static readonly Code FileThere = Area.Declare(487, "The bay file is there already", "Start the daemon with it, or move it away first.");
    public static readonly Code FileUnwritable = Area.Declare(488, "The bay file cannot be written", "Free space, or see to the rights of its folder.");
    public static readonly Code DeviceSilent = Area.Declare(489, "A device that was found is no longer heard", "Check its power and cable; search again when it is somewhere else now.");
    public static readonly Code CellsUnknown = Area.Declare(490, "Which numbers of a device are its load cells is not known", "Step on its pad and off again.");
    public static readonly Code BayRuns = Area.Declare(491, "A daemon with a bay runs at that address already", "It needs no setting up: scalelink watch shows its loads. For another bay start another daemon, and name it with --daemon.");
    public static readonly Code NothingFound = Area.Declare(492, "No device was found", "See to what each port says above, then search again.");
}
