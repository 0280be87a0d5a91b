namespace ScaleLink.Weighing.Settling.Noise;

/// <summary>
/// Repeatability of a reading against averaging time, from evenly spaced readings. Where the curve stops falling, longer averaging
/// stops helping. Formulas: W. J. Riley, Handbook of Frequency Stability Analysis, NIST SP 1065 (2008), section 5.2.
/// </summary>
static class AllanDeviation
{
    /// <summary>From the differences of neighbouring means of <paramref name="length"/> readings, without overlap.</summary>
    /// <param name="readings">Evenly spaced; the result has their unit.</param>
    /// <param name="length">Readings in one mean, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few readings for this length.</exception>
    public static double Plain(ReadOnlySpan<double> readings, int length)
    {
        Check(readings, length, 2L * length);
        var means = readings.Length / length;
        double sum = 0, before = Mean(readings[..length]);
        for (var i = 1; i < means; i++)
        {
            var now = Mean(readings.Slice(i * length, length));
            sum += (now - before) * (now - before);
            before = now;
        }
        return Math.Sqrt(sum / (2 * (means - 1)));
    }

    /// <summary>From all pairs of neighbouring means: the same expectation as <see cref="Plain"/>, less repeatability.</summary>
    /// <inheritdoc cref="Plain"/>
    public static double Overlapping(ReadOnlySpan<double> readings, int length)
    {
        Check(readings, length, 2L * length);
        var sum = 0.0;
        var pairs = readings.Length - 2 * length + 1;
        for (var i = 0; i < pairs; i++)
        {
            var step = Mean(readings.Slice(i + length, length)) - Mean(readings.Slice(i, length));
            sum += step * step;
        }
        return Math.Sqrt(sum / (2.0 * pairs));
    }

    /// <summary>With an extra average over the pairs, which tells white from flicker phase noise.</summary>
    /// <inheritdoc cref="Plain"/>
    public static double Modified(ReadOnlySpan<double> readings, int length)
    {
        Check(readings, length, 3L * length - 1);
        var places = readings.Length - 3 * length + 2;
        var sum = 0.0;
        for (var j = 0; j < places; j++)
        {
            var inner = 0.0;
            for (var i = j; i < j + length; i++) inner += Mean(readings.Slice(i + length, length)) - Mean(readings.Slice(i, length));
            sum += inner / length * (inner / length);
        }
        return Math.Sqrt(sum / (2.0 * places));
    }

    static void Check(ReadOnlySpan<double> readings, int length, long least)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(length, 1);
        if (readings.Length < least)
            throw new ArgumentOutOfRangeException(nameof(length), length, $"Means of this length need {least} readings; there are {readings.Length}.");
    }

    static double Mean(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values) sum += value;
        return sum / values.Length;
    }
}
