namespace ScaleLink.Probing.Recognition;

/// <summary>
/// Which registers look like the number of a load: a converter's last digits never stand still, its upper half does. Nothing is known by it, it is
/// where to look first.
/// </summary>
internal static class RegisterNumbers
{
    // A converter has 24 bits at most; what is larger as a whole number is more likely one with a point.
    private const int LargestCount = 1 << 24;
    private const double SmallestReal = 1e-3, LargestReal = 1e6;

    public static IReadOnlyList<RegisterNumber> Of(ushort first, IReadOnlyList<ushort[]> readings)
    {
        var found = new List<RegisterNumber>();
        var count = readings.Count == 0 ? 0 : readings[0].Length;
        for (var k = 0; k < count; k++)
        {
            var at = (ushort)(first + k);
            if (k + 1 < count && IsPair(readings, k, k + 1) is { } type)
                found.Add(new RegisterNumber(at, type, IsLowFirst: false));
            else if (k + 1 < count && !IsPadding(readings, k + 1) && IsPair(readings, k + 1, k) is { } reversed)
                found.Add(new RegisterNumber(at, reversed, IsLowFirst: true));
            else if (Moves(readings, k))
                found.Add(new RegisterNumber(at, "s16", IsLowFirst: false));
            else
                continue;
            k += found[^1].Type == "s16" ? 0 : 1;
        }

        return found;
    }

    private static string? IsPair(IReadOnlyList<ushort[]> readings, int high, int low)
    {
        if (!Moves(readings, low))
            return null;
        var whole = readings.Select(r => r[high] << 16 | r[low]).ToList();
        var real = whole.Select(w => Math.Abs(BitConverter.Int32BitsToSingle(w))).ToList();
        return whole.TrueForAll(w => Math.Abs((long)w) <= LargestCount) && whole.Max() - (long)whole.Min() <= ushort.MaxValue ? "s32"
            : real.TrueForAll(r => r is >= (float)SmallestReal and <= (float)LargestReal) && real.Max() <= 2 * real.Min() ? "f32"
            : null;
    }

    // Behind a number of 16 bits, nothing: not its upper half.
    private static bool IsPadding(IReadOnlyList<ushort[]> readings, int register) => readings.All(r => r[register] is 0 or ushort.MaxValue);

    private static bool Moves(IReadOnlyList<ushort[]> readings, int register) => readings.Any(r => r[register] != readings[0][register]);
}
