namespace ScaleLink.Weighing.Settling;

/// <summary>A value with one standard uncertainty in the same unit; no uncertainty means that nothing is claimed.</summary>
public readonly record struct Estimate(double Value, double? StandardUncertainty);
