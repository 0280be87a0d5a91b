namespace ScaleLink.Weighing.PadInterchange;

/// <summary>Cautions to show wherever pads are moved under a car. Common practice, no published source.</summary>
static class InterchangeCautions
{
    /// <summary>In the order to be read.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        "Support a raised car on axle stands before a pad is moved; chock the wheels that touch; nobody under a car on a jack.",
        "Pads are heavy: carry them with two people, and keep fingers from under them.",
        "Hands clear while the car comes down or is bounced.",
    ];
}
