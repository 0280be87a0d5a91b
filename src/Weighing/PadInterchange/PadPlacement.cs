
namespace ScaleLink.Weighing.PadInterchange;

/// <summary>One weighing of the car with the pads in certain places.</summary>
/// <param name="PadAt">Serial number of the pad under each corner, in the order LF, RF, LR, RR.</param>
/// <param name="LoadsKg">Settled loads at the corners.</param>
sealed record PadPlacement(IReadOnlyList<string> PadAt, Corners LoadsKg);

/// <summary>How one pad's gain departs from the mean of the four.</summary>
/// <param name="Pad">Serial number.</param>
/// <param name="Relative">Relative departure: 0.001 reads a thousandth high.</param>
/// <param name="StandardUncertainty">Of the departure.</param>
readonly record struct PadGain(string Pad, double Relative, double StandardUncertainty)
{
    /// <summary>Half-width of the interval that holds the departure with 95 % (Student's t).</summary>
    /// <param name="degreesOfFreedom">Of the result.</param>
    public double Expanded(int degreesOfFreedom) => StandardUncertainty * Coverage.Factor(degreesOfFreedom);
}

/// <summary>Outcome of interchanging the pads under one car.</summary>
sealed record InterchangeResult
{
    /// <summary>Departures of the four gains; their sum is zero.</summary>
    public required IReadOnlyList<PadGain> Gains { get; init; }

    /// <summary>Loads of the car with the departures taken out.</summary>
    public required Corners LoadsKg { get; init; }

    /// <summary>How much the car's warp changed from the mean, placement by placement, kg at each corner.</summary>
    public required IReadOnlyList<double> WarpKg { get; init; }

    /// <summary>Repeatability that remains, kg.</summary>
    public required double ResidualSdKg { get; init; }

    /// <summary>For Student's t.</summary>
    public required int DegreesOfFreedom { get; init; }

    /// <summary>What this method cannot see.</summary>
    public static IReadOnlyList<string> CannotSee { get; } =
    [
        "an error that all four pads share: only known masses show it",
        "errors that change with the load: each pad was read near one load",
        "pads of unequal height: they shift the car's loads with the pad and pass for gain",
        "anything that changed on the car between the placements, other than its warp",
    ];
}
