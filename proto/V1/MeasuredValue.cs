using ScaleLink.Measure;

namespace ScaleLink.Api.V1;

public sealed partial class MeasuredValue
{
    /// <summary>The same for arithmetic and for showing; what is absent stays absent.</summary>
    public Value AsValue => new(Estimate, HasStandardUncertainty ? StandardUncertainty : null, HasDegreesOfFreedom ? DegreesOfFreedom : null);

    /// <summary>As it travels; what is absent stays absent.</summary>
    public static MeasuredValue Of(Value value)
    {
        var message = new MeasuredValue { Estimate = value.Estimate };
        if (value.StandardUncertainty is { } uncertainty)
            message.StandardUncertainty = uncertainty;
        if (value.DegreesOfFreedom is { } freedom)
            message.DegreesOfFreedom = freedom;
        return message;
    }

    /// <summary>As it travels; nothing for nothing.</summary>
    public static MeasuredValue? Of(Value? value) => value is { } known ? Of(known) : null;
}
