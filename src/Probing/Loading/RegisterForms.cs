namespace ScaleLink.Probing.Loading;

/// <summary>What neighbouring registers may stand for: every form at every place. Which of them a device means is seen when its pad is loaded.</summary>
internal static class RegisterForms
{
    private static readonly NumberForm[] Pairs = [NumberForm.S32HighFirst, NumberForm.S32LowFirst, NumberForm.F32HighFirst, NumberForm.F32LowFirst];

    /// <summary>The places of so many registers, in the order of <see cref="Values"/>.</summary>
    public static IReadOnlyList<NumberPlace> Places(int registers) =>
    [
        .. Enumerable.Range(0, registers).Select(at => new NumberPlace(at, NumberForm.S16)),
        .. Enumerable.Range(0, Math.Max(0, registers - 1)).SelectMany(at => Pairs.Select(form => new NumberPlace(at, form))),
    ];

    /// <summary>The registers read in every form; a float that is none is not a number.</summary>
    public static double[] Values(IReadOnlyList<ushort> registers) => [.. Places(registers.Count).Select(p => Read(registers, p))];

    private static double Read(IReadOnlyList<ushort> registers, NumberPlace place)
    {
        if (place.Form == NumberForm.S16)
            return (short)registers[place.At];
        var (first, second) = (registers[place.At], registers[place.At + 1]);
        var isHighFirst = place.Form is NumberForm.S32HighFirst or NumberForm.F32HighFirst;
        var bits = isHighFirst ? first << 16 | second : second << 16 | first;
        return place.Form is NumberForm.S32HighFirst or NumberForm.S32LowFirst ? bits : BitConverter.Int32BitsToSingle(bits);
    }
}
