using System.Text.Json.Serialization;

namespace ScaleLink.Measure;

/// <summary>
/// A measured or computed value: its estimate and one standard uncertainty, both in the unit that the name around it says. Without an uncertainty
/// nothing is claimed, which is not the same as an uncertainty of zero. Terms of JCGM 100:2008.
/// </summary>
/// <param name="Estimate">Best estimate. Stands as "value" in records that were written before it had this name.</param>
/// <param name="StandardUncertainty">One standard uncertainty, zero or more. Null: nothing is claimed.</param>
/// <param name="DegreesOfFreedom">For Student's t, above zero. Null: many.</param>
public readonly record struct Value([property: JsonPropertyName("value")] double Estimate, double? StandardUncertainty, double? DegreesOfFreedom = null)
{
    /// <summary>True when an uncertainty is stated.</summary>
    [JsonIgnore]
    public bool IsClaimed => StandardUncertainty is not null;

    /// <summary>The standard uncertainty, for arithmetic on values that always have one.</summary>
    /// <exception cref="InvalidOperationException">Nothing is claimed.</exception>
    [JsonIgnore]
    public double Uncertainty => StandardUncertainty ?? throw new InvalidOperationException("Nothing is claimed about this value.");

    /// <summary>U: half the width of the interval that holds the value with 95 %. Null: nothing is claimed.</summary>
    [JsonIgnore]
    public double? Expanded => IsClaimed ? HalfWidth() : null;

    /// <summary>Half the width of the interval that holds the value with this probability, for arithmetic.</summary>
    /// <exception cref="InvalidOperationException">Nothing is claimed.</exception>
    public double HalfWidth(double probability = Coverage.Usual) => Uncertainty * Coverage.Factor(DegreesOfFreedom, probability);

    /// <summary>The value without its sign, as of a difference whose direction is said in words.</summary>
    [JsonIgnore]
    public Value Size => this with { Estimate = Math.Abs(Estimate) };

    /// <summary>This many times the value; its degrees of freedom stay.</summary>
    public Value Times(double factor) => this with { Estimate = Estimate * factor, StandardUncertainty = StandardUncertainty * Math.Abs(factor) };
}
