// Each code says by its own text what it means.
#pragma warning disable CS1591

namespace ScaleLink.Measure.Diagnostics;

/// <summary>What is wrong with a car, its file, or a question about it.</summary>
public static class CarCodes
{
    /// <summary>These codes together.</summary>
    public static CodeArea Area { get; } = new("Car files and questions about a car", "What is wrong with a car, its file, or a question about it.");

    public static readonly Code Geometry = Area.Declare(501, "Wheelbase or track is not a usable length", "Measure it at the contacts of the wheels, in mm.");
    public static readonly Code Rate = Area.Declare(502, "A spring, tyre or bar rate is not usable", "Give it in N/mm, within the named range.");
    public static readonly Code MotionRatio = Area.Declare(503, "A motion ratio is not usable", "Give spring travel / wheel travel.");
    public static readonly Code PerchPitch = Area.Declare(504, "A perch pitch or the smallest useful turn is not usable", "Give mm a turn; the smallest turn as a part of one.");
    public static readonly Code ThreadRange = Area.Declare(505, "A thread range is not usable", "Count the turns left up and down.");
    public static readonly Code Uncertainty = Area.Declare(506, "A standard uncertainty is missing or negative", "State what the value is good to.");
    public static readonly Code Height = Area.Declare(507, "A height is not usable: centre of gravity, roll axis, or ride height limit", "Give mm, the lower limit below the higher.");
    public static readonly Code Target = Area.Declare(508, "A target or its tolerance is not usable", "Give (RF + LR) / total in percent, 30 to 70, and a tolerance above 0.");
    public static readonly Code Ballast = Area.Declare(509, "A ballast station is not usable", "Give each a name of its own, what is fitted and what fits in.");
    public static readonly Code NameMissing = Area.Declare(510, "The car has no name", "Name it, so that records can be told apart.");
    public static readonly Code Loads = Area.Declare(511, "The four loads are not those of a car on its wheels", "Weigh the car on all four pads.");
    public static readonly Code NotJson = Area.Declare(512, "A document is not JSON", "Look at the named line for a missing comma, quote or brace.");
    public static readonly Code UnknownField = Area.Declare(513, "A document has a field that means nothing there", "Compare its spelling with the known ones.");
    public static readonly Code MissingField = Area.Declare(514, "A document lacks a field", "Add it; the message gives an example.");
    public static readonly Code WrongKind = Area.Declare(515, "A field of a document is of the wrong kind", "Write what the message asks for.");
    public static readonly Code CarNotFound = Area.Declare(516, "No such car was saved, or not in that revision", "See which there are: scalelink car list.");
    public static readonly Code NoCarInBay = Area.Declare(517, "Nobody said which car stands in the bay", "Choose one: Car on the page, or scalelink car use FILE.");
    public static readonly Code NoSettledLoads = Area.Declare(518, "The bay has no settled loads at this moment", "Wait until the car is settled, or send loads with the question.");
    public static readonly Code EarlierName = Area.Declare(519, "A field of a document has an earlier name", "Write its present one; it is read either way.");
    public static readonly Code LiftUnusable = Area.Declare(530, "An axle lift is too small, missing, or not possible", "Lift one axle in three steps or more, then the other.");
    public static readonly Code LiftsDisagree = Area.Declare(531, "The axle lifts contradict each other", "Measure the odd lift again.");
    public static readonly Code Fuel = Area.Declare(556, "What is stated about the fuel is not usable", "Give density, litres and place, each with its uncertainty.");
    public static readonly Code Driver = Area.Declare(557, "A driver is not usable", "Give each a name of their own, a mass with suit and helmet, and a seat.");
    public static readonly Code ClassMinimum = Area.Declare(558, "The class minimum is not usable, or counts what the car file does not state", "Correct it, or add what it counts.");
    public static readonly Code Marks = Area.Declare(617, "The marks where ride heights are measured are not usable", "Give four places, in the order of the corners and well apart.");
    public static readonly Code FileTooLarge = Area.Declare(559, "A car file is larger than 256 kB", "See that it is the car file: a whole car takes a few kilobytes.");
    public static readonly Code NameUnprintable = Area.Declare(579, "A name in a document is too long, or has signs that do not show, such as escape or marks that turn the direction of writing", "Type it anew, with letters, digits and signs that show.");
}
