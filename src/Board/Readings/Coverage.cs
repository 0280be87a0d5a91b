using ScaleLink.Api.V1;

namespace ScaleLink.Board.Readings;

/// <summary>From one standard uncertainty to the interval that covers 95 %.</summary>
internal static class Coverage
{
    // Student's t for 95 %, by degrees of freedom: JCGM 100:2008, table G.2.
    private static readonly (int DegreesOfFreedom, double Factor)[] Table =
    [
        (1, 12.71), (2, 4.30), (3, 3.18), (4, 2.78), (5, 2.57), (6, 2.45), (7, 2.36), (8, 2.31), (9, 2.26), (10, 2.23),
        (11, 2.20), (12, 2.18), (13, 2.16), (14, 2.14), (15, 2.13), (16, 2.12), (17, 2.11), (18, 2.10), (19, 2.09), (20, 2.09),
        (25, 2.06), (30, 2.04), (35, 2.03), (40, 2.02), (45, 2.01), (50, 2.01), (100, 1.984),
    ];

    private const double Many = 1.960;

    /// <summary>U for 95 %, in the unit of the value; nothing when nothing is claimed.</summary>
    public static double? Expanded(Quantity? quantity) => quantity is { HasStandardUncertainty: true, StandardUncertainty: > 0 } q
        ? q.StandardUncertainty * Factor(q.HasDegreesOfFreedom ? q.DegreesOfFreedom : null)
        : null;

    /// <summary>Degrees of freedom between two rows take the row below, which never understates (JCGM 100:2008, G.4.1).</summary>
    public static double Factor(double? degreesOfFreedom) => degreesOfFreedom is not { } v || v > Table[^1].DegreesOfFreedom
        ? Many
        : Table.LastOrDefault(row => row.DegreesOfFreedom <= v, Table[0]).Factor;
}
