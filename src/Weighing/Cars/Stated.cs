namespace ScaleLink.Weighing.Cars;

/// <summary>A number that somebody stated about the car, and how sure they are.</summary>
/// <param name="Value">In the unit that the property's name gives.</param>
/// <param name="StandardUncertainty">One standard uncertainty, same unit.</param>
/// <param name="Assumed">True when nobody knows it and the value is only a wide guess. Corrections that lean on it are refused.</param>
readonly record struct Stated(double Value, double StandardUncertainty, bool Assumed = false)
{
    /// <summary>A value whose uncertainty does not matter.</summary>
    public static Stated Exactly(double value) => new(value, 0);

    /// <summary>A value good to a share of itself; 0.05 is five percent, one standard uncertainty.</summary>
    public static Stated Within(double value, double share) => new(value, Math.Abs(value) * share);

    /// <summary>A guess where nothing is known: plans may use it with its wide uncertainty, corrections may not.</summary>
    public static Stated Guess(double value, double standardUncertainty) => new(value, standardUncertainty, Assumed: true);

    /// <summary>The same uncertainty about another value.</summary>
    public Stated Moved(double by) => this with { Value = Value + by };
}
