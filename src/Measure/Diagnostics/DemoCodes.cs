// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What keeps the demo from running.</summary>
public static class DemoCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("The demo", "What keeps the demo from running.");

    public static readonly Code PortBusy = Area.Declare(430, "A port that the demo wants is busy", "Stop the program that has it, or give another.");
    public static readonly Code ProgramMissing = Area.Declare(431, "A program of the demo is missing", "Build the whole checkout, or install the program beside this one.");
    public static readonly Code NotReady = Area.Declare(432, "A program of the demo was not ready in time, or began with something else", "Try again; build client and simulator from the same checkout.");
    public static readonly Code ProgramEnded = Area.Declare(433, "A program of the demo ended by itself", "Correct what it says, then start again.");
    public static readonly Code SimulatorRefused = Area.Declare(434, "The simulator refused, or its channel is lost", "Do what it says, or start the demo again.");
    public static readonly Code TimeOver = Area.Declare(435, "The demo's time was over before cross weight was on target", "Give it longer with --seconds.");
    public static readonly Code NoHost = Area.Declare(436, "There is no dotnet host to run the programs with", "Put dotnet on the path, or set DOTNET_HOST_PATH.");
}
