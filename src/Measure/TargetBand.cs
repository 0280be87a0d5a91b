using System.Globalization;

namespace ScaleLink.Measure;

/// <summary>A target with its tolerance, both in the unit of the value.</summary>
/// <param name="Centre">What is aimed for.</param>
/// <param name="Tolerance">Either side, zero or more.</param>
public readonly record struct TargetBand(double Centre, double Tolerance)
{
    /// <summary>As people read it, for a target in per cent: "50.0 ±0.25 %".</summary>
    public string PercentText => string.Create(CultureInfo.InvariantCulture, $"{Centre:0.0##} ±{Tolerance:0.0##} %");

    /// <summary>Judges by the rule that a value conforms only when its whole interval does (JCGM 106:2012, 8.3: guarded acceptance).</summary>
    public Aim Judge(Value value)
    {
        if (value.Expanded is not { } expanded || !double.IsFinite(value.Estimate))
            return Aim.Unknown;
        var off = value.Estimate - Centre;
        if (Math.Abs(off) + expanded <= Tolerance)
            return Aim.Within;
        return Math.Abs(off) - expanded <= Tolerance ? Aim.TooCloseToTell : off > 0 ? Aim.High : Aim.Low;
    }
}
