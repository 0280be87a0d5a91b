namespace ScaleLink.Client.Readings;

/// <summary>What is said where the work can hurt someone. Common practice, no published source; local codes come first.</summary>
internal static class Cautions
{
    /// <summary>While the car is off the pads, in lines for a screen.</summary>
    public static IReadOnlyList<string> Raised { get; } =
    [
        "Caution: support a raised car on axle stands; chock the wheels that touch.",
        "Nobody under a car on a jack; hands clear while it comes down or is bounced.",
    ];

    /// <summary>Before a zero is taken.</summary>
    public const string Zero = "Caution: the pads must be empty and quiet. Support a car that was lifted off on axle stands; nobody under a car on a jack.";
}
