namespace ScaleLink.Protocol.PadFrames;

/// <summary>A decimal quantity in 16 bits, where the lowest value means that there is none.</summary>
static class WireDecimal
{
    public const short Absent = short.MinValue;

    public static double? ToDouble(short wire, double perUnit) => wire == Absent ? null : wire / perUnit;

    /// <exception cref="ArgumentOutOfRangeException">Not a number, or beyond 32 767 steps.</exception>
    public static short FromDouble(double? value, double perUnit, string name)
    {
        if (value is not { } number)
            return Absent;
        var steps = Math.Round(number * perUnit);
        if (!(Math.Abs(steps) <= short.MaxValue))
            throw new ArgumentOutOfRangeException(name, number, $"The frame carries -{short.MaxValue / perUnit} to {short.MaxValue / perUnit}.");
        return (short)steps;
    }
}
