// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What keeps a setup sheet from being read, saved or copied.</summary>
public static class SheetCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("Setup sheets", "What keeps a setup sheet from being read, saved or copied.");

    public static readonly Code NotFound = Area.Declare(610, "There is no setup sheet of that car, track and driver, or no such version of it", "See which there are: scalelink sheet list.");
    public static readonly Code Overtaken = Area.Declare(611, "Somebody else has saved a newer version of the setup sheet", "Look at what it changed, then save again on top of it.");
    public static readonly Code UnknownField = Area.Declare(612, "A setup sheet has no such field, or not at that place", "See the fields: scalelink sheet fields.");
    public static readonly Code Value = Area.Declare(613, "A value of a setup sheet is no number, in no unit of its kind, out of range, or too long", "Write what the message asks for.");
    public static readonly Code Contradiction = Area.Declare(614, "A car file says one thing of the car and another in its setup", "Correct one of them, or leave it out of the setup.");
    public static readonly Code NothingNew = Area.Declare(615, "The setup sheet would be the same as its newest version", "Change something, or leave it as it is.");
    public static readonly Code Name = Area.Declare(616, "Track or driver of a setup sheet has signs that do not show, or is too long", "Type it anew, with at most 80 letters, digits and signs that show.");
}
