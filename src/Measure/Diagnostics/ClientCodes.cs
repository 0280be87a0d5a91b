// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What the terminal program meets in files and in what is typed.</summary>
public static class ClientCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("The terminal program", "What the terminal program meets in files and in what is typed.");

    public static readonly Code FileUnreadable = Area.Declare(440, "A file cannot be read", "Check the path and the rights.");
    public static readonly Code PadUnclear = Area.Declare(444, "It is not clear which pad is meant", "Name its corner: LF, RF, LR or RR.");
    public static readonly Code FileUnwritable = Area.Declare(445, "A file cannot be written", "Check the folder and the rights, or name another file.");
    public static readonly Code FileExists = Area.Declare(446, "The file is there already", "Name another file, or edit that one.");
    public static readonly Code AnswersEnded = Area.Declare(447, "The answers for a new car ended early; those that were given are kept in a draft", "Call scalelink car new with the same file again: it goes on there.");
    public static readonly Code MassesNotUnderstood = Area.Declare(448, "The list of masses is not understood", "Write a line for each mass: label, nominal value, class or tolerance.");
    public static readonly Code LoadWithoutLabels = Area.Declare(449, "A load names no masses", "Write the labels of the masses with + between them.");
    public static readonly Code OrderUnknown = Area.Declare(450, "A line on standard input is no order", "Orders: record, back, skip, again N, finish.");
    public static readonly Code NeedsTerminal = Area.Declare(438, "A command that draws on the screen has none", "Run it in a terminal.");
    public static readonly Code TurnsNotUnderstood = Area.Declare(439, "Turns that were typed are not understood", "Write corners and turns in pairs, up positive: RF 0.5 LR -0.25.");
}
