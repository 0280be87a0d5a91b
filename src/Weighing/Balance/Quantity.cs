namespace ScaleLink.Weighing.Balance;

/// <summary>A result with one standard uncertainty in its own unit.</summary>
/// <param name="Value">The value.</param>
/// <param name="StandardUncertainty">One standard uncertainty.</param>
/// <param name="DegreesOfFreedom">For Student's t. Null: many.</param>
public readonly record struct Quantity(double Value, double StandardUncertainty, double? DegreesOfFreedom = null)
{
    /// <summary>Half width of the interval that holds the true value with this probability, in the unit of the value.</summary>
    public double HalfWidth(double probability = 0.95) => StandardUncertainty * Coverage.Factor(probability, DegreesOfFreedom);
}
