using ScaleLink.Api.V1;

namespace ScaleLink.Board.Readings;

/// <summary>One number for each corner.</summary>
internal static class Corners
{
    /// <summary>As the car stands: front above rear, left on the left.</summary>
    public static IReadOnlyList<Corner> All { get; } = [Corner.Lf, Corner.Rf, Corner.Lr, Corner.Rr];

    /// <summary>The diagonal of cross weight.</summary>
    public static bool IsRfLr(Corner corner) => corner is Corner.Rf or Corner.Lr;

    public static CornerNumbers Only(Corner corner, double number) => Of(c => c == corner ? number : 0);

    public static CornerNumbers Of(Func<Corner, double> number) => new() { Lf = number(Corner.Lf), Rf = number(Corner.Rf), Lr = number(Corner.Lr), Rr = number(Corner.Rr) };

    public static double At(this CornerNumbers? numbers, Corner corner) => numbers is null ? 0 : corner switch
    {
        Corner.Lf => numbers.Lf,
        Corner.Rf => numbers.Rf,
        Corner.Lr => numbers.Lr,
        Corner.Rr => numbers.Rr,
        _ => 0,
    };

    public static Quantity? At(this CornerQuantities? quantities, Corner corner) => corner switch
    {
        Corner.Lf => quantities?.Lf,
        Corner.Rf => quantities?.Rf,
        Corner.Lr => quantities?.Lr,
        Corner.Rr => quantities?.Rr,
        _ => null,
    };

    public static bool IsZero(this CornerNumbers? numbers) => All.All(c => numbers.At(c) == 0);
}
