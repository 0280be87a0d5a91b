using ScaleLink.Api.V1;
using ScaleLink.Measure;
using Corner = ScaleLink.Api.V1.Corner;

namespace ScaleLink.Api;

/// <summary>Corners and numbers for each corner, as they travel and for arithmetic.</summary>
public static class WireCorners
{
    /// <summary>As the car stands: front above rear, left on the left.</summary>
    public static IReadOnlyList<Corner> All { get; } = [Corner.Lf, Corner.Rf, Corner.Lr, Corner.Rr];

    /// <summary>As it travels.</summary>
    public static Corner ToWire(this Measure.Corner corner) => All[(int)corner];

    /// <summary>For arithmetic; null when it names no corner.</summary>
    public static Measure.Corner? ToMeasure(this Corner corner) => corner is >= Corner.Lf and <= Corner.Rr ? (Measure.Corner)(corner - Corner.Lf) : null;

    /// <summary>"LF"; "?" when it names no corner.</summary>
    public static string Name(this Corner corner) => corner.ToMeasure()?.ToString() ?? "?";

    /// <summary>The corner of that name; unspecified when there is none.</summary>
    public static Corner Named(string name) => All.FirstOrDefault(c => c.Name() == name);

    /// <summary>Whether it belongs to the diagonal that cross weight counts.</summary>
    public static bool IsOfCrossWeight(this Corner corner) => corner.ToMeasure() is { } known && Shares.IsOfCrossWeight(known);

    /// <summary>As they travel.</summary>
    public static CornerNumbers ToWire(this Corners c) => new() { Lf = c.LF, Rf = c.RF, Lr = c.LR, Rr = c.RR };

    /// <summary>One number a corner, asked of <paramref name="number"/>.</summary>
    public static CornerNumbers From(Func<Corner, double> number) => new() { Lf = number(Corner.Lf), Rf = number(Corner.Rf), Lr = number(Corner.Lr), Rr = number(Corner.Rr) };

    /// <summary>A number at one corner, zero at the others.</summary>
    public static CornerNumbers Only(Corner corner, double number) => From(c => c == corner ? number : 0);

    /// <summary>For arithmetic; zeros for nothing.</summary>
    public static Corners ToCorners(this CornerNumbers? c) => c is null ? default : new(c.Lf, c.Rf, c.Lr, c.Rr);

    /// <summary>The number at one corner; zero where there is none.</summary>
    public static double At(this CornerNumbers? numbers, Corner corner) => corner.ToMeasure() is { } known ? numbers.ToCorners()[known] : 0;

    /// <summary>The value at one corner; null where there is none.</summary>
    public static MeasuredValue? At(this CornerValues? values, Corner corner) => corner switch
    {
        Corner.Lf => values?.Lf,
        Corner.Rf => values?.Rf,
        Corner.Lr => values?.Lr,
        Corner.Rr => values?.Rr,
        _ => null,
    };

    /// <summary>Whether nothing is asked at any corner.</summary>
    public static bool IsZero(this CornerNumbers? numbers) => numbers.ToCorners() == default;
}
