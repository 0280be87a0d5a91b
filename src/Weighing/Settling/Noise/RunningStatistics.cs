namespace ScaleLink.Weighing.Settling.Noise;

/// <summary>Mean and standard deviation of values as they come (Welford 1962): no list is kept, and no digits are lost.</summary>
sealed class RunningStatistics
{
    double _squares;

    /// <summary>Values seen.</summary>
    public long Count { get; private set; }

    /// <summary>Their mean; 0 before the first.</summary>
    public double Mean { get; private set; }

    /// <summary>Sample standard deviation (divided by count - 1); null with fewer than two values.</summary>
    public double? StandardDeviation => Count < 2 ? null : Math.Sqrt(_squares / (Count - 1));

    /// <summary>Standard error of the mean of independent values; null with fewer than two.</summary>
    public double? StandardErrorOfMean => StandardDeviation is { } deviation ? deviation / Math.Sqrt(Count) : null;

    /// <summary>Takes one value.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not a finite number.</exception>
    public void Add(double value)
    {
        if (!double.IsFinite(value)) throw new ArgumentOutOfRangeException(nameof(value), value, "Only finite numbers have a mean.");
        Count++;
        var off = value - Mean;
        Mean += off / Count;
        _squares += off * (value - Mean);
    }

    /// <summary>Forgets all values.</summary>
    public void Clear() => (Count, Mean, _squares) = (0, 0, 0);
}
