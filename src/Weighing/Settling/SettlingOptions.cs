namespace ScaleLink.Weighing.Settling;

/// <summary>What the workshop may choose about settling.</summary>
sealed record SettlingOptions
{
    /// <summary>Half width of the band that "settled" speaks of, kg on each pad.</summary>
    public double ToleranceKg { get; init; } = 0.1;

    /// <summary>
    /// Standard deviation of one 50 ms block on each pad at rest, kg, until it has been learned. Too large is safe; too
    /// small by a factor of two costs a few percent of coverage.
    /// </summary>
    public Corners NoiseKg { get; init; } = Corners.Same(0.05);

    /// <summary>Expanded uncertainty (k = 2) above which nothing is claimed, kg on each pad.</summary>
    public double ClaimLimitKg { get; init; } = 1;

    /// <summary>How long the car must have been settled before a reading is put on record, seconds, 1 to 2.</summary>
    public double WeighingHoldSeconds { get; init; } = 1.5;

    /// <summary>These options, or an error that names what is wrong.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A value is not positive and finite, or the hold lies outside 1 to 2 s.</exception>
    public SettlingOptions Checked()
    {
        Positive(ToleranceKg, nameof(ToleranceKg));
        Positive(ClaimLimitKg, nameof(ClaimLimitKg));
        foreach (var corner in Corners.All) Positive(NoiseKg[corner], nameof(NoiseKg));
        if (WeighingHoldSeconds is not (>= 1 and <= 2))
            throw new ArgumentOutOfRangeException(nameof(WeighingHoldSeconds), WeighingHoldSeconds, "Choose a hold of 1 to 2 s.");
        return this;
    }

    static void Positive(double value, string name)
    {
        if (!(value > 0 && double.IsFinite(value)))
            throw new ArgumentOutOfRangeException(name, value, "Choose a positive number of kilograms.");
    }
}
