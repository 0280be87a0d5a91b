using ScaleLink.Api.V1;
using ScaleLink.Measure;

namespace ScaleLink.Client.Terminal;

/// <summary>
/// The scales of the beam, always the same: it is level on the target and tilts fully three percent beside it; the scale above it is a lens on the last half
/// percent.
/// </summary>
internal sealed record BeamScale(double Target, int Centre, int HalfWidth)
{
    public static BeamScale For(Loads loads, int width) => new(loads.Target?.CrossWeightPercent ?? BeamRange.Even, width / 2, width / 2 - 5);

    /// <summary>Column of a cross weight under the lens, cut off at the ends.</summary>
    public int ColumnOf(double percent) => Centre + (int)Math.Round(Math.Clamp((percent - Target) / BeamRange.Lens, -1, 1) * HalfWidth);

    /// <summary>-1 or 1 for a cross weight on that side of the lens; 0 for one within it.</summary>
    public int Beyond(double percent) => Math.Abs(percent - Target) > BeamRange.Lens ? Math.Sign(percent - Target) : 0;

    /// <summary>Distance from the target as a part of the beam's span; right arm, RF + LR, down is positive.</summary>
    public double Tilt(double percent) => (percent - Target) / BeamRange.Span;

    /// <summary>The five marks of the lens, percent.</summary>
    public IEnumerable<double> Marks => Enumerable.Range(-2, 5).Select(i => Target + i * BeamRange.Lens / 2);

    /// <summary>The notch at the target: as wide as the uncertainty to either side, never narrower than one column.</summary>
    public (int First, int Last)? Notch(Loads loads)
    {
        if (loads.Target is not { } target || loads.CrossWeightPercent?.AsValue.Expanded is not { } expanded)
            return null;
        return (ColumnOf(target.CrossWeightPercent - expanded), ColumnOf(target.CrossWeightPercent + expanded));
    }
}
