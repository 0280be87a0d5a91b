namespace ScaleLink.Protocol.Readings;

/// <summary>The unit of a number as the device gives it.</summary>
enum FieldUnit
{
    /// <summary>Converter counts of a load; what one is worth is the calibration's matter.</summary>
    Count,
    /// <summary>Gram.</summary>
    Gram,
    /// <summary>Kilogram.</summary>
    Kilogram,
    /// <summary>Pound, 0.45359237 kg exactly.</summary>
    Pound,
    /// <summary>Degree of angle.</summary>
    Degree,
    /// <summary>Thousandth of a radian.</summary>
    Milliradian,
    /// <summary>Degree Celsius.</summary>
    Celsius,
    /// <summary>Degree Fahrenheit.</summary>
    Fahrenheit,
    /// <summary>Bits of a status word.</summary>
    Bits,
}
