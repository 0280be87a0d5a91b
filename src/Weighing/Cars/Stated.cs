
namespace ScaleLink.Weighing.Cars;

/// <summary>A value that somebody stated about the car: always with an uncertainty, and said to be a guess where it is one.</summary>
/// <param name="Value">In the unit that the property's name gives.</param>
/// <param name="Assumed">True when nobody knows it and the value is only a wide guess. Corrections that lean on it are refused.</param>
readonly record struct Stated(Value Value, bool Assumed = false)
{
    public Stated(double estimate, double standardUncertainty, bool assumed = false)
        : this(new Value(estimate, standardUncertainty), assumed)
    {
    }

    public double Estimate => Value.Estimate;

    /// <summary>One standard uncertainty, same unit.</summary>
    public double StandardUncertainty => Value.Uncertainty;

    /// <summary>A value whose uncertainty does not matter.</summary>
    public static Stated Exactly(double value) => new(value, 0);

    /// <summary>A value good to a share of itself; 0.05 is five percent, one standard uncertainty.</summary>
    public static Stated Within(double value, double share) => new(value, Math.Abs(value) * share);

    /// <summary>A guess where nothing is known: plans may use it with its wide uncertainty, corrections may not.</summary>
    public static Stated Guess(double value, double standardUncertainty) => new(value, standardUncertainty, assumed: true);

    /// <summary>The same uncertainty about another value.</summary>
    public Stated Moved(double by) => this with { Value = Value with { Estimate = Value.Estimate + by } };
}
