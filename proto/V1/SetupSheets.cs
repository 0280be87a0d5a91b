using ScaleLink.Measure;
using Said = ScaleLink.Measure.Sentences.Sentence;

namespace ScaleLink.Api.V1;

public sealed partial class SheetValue
{
    /// <summary>For people, in the units of the device, with the unit.</summary>
    public string Show(Units units)
    {
        ArgumentNullException.ThrowIfNull(units);
        if (WhatCase != WhatOneofCase.Number)
            return Text;
        var unit = units.For(Unit);
        return unit.Sign.Length == 0 ? unit.ShowShortest(Number) : $"{unit.ShowShortest(Number)}{unit.Suffix}";
    }
}

public sealed partial class SetupSheet
{
    /// <summary>Track and driver, as far as it has them.</summary>
    public string Names => string.Join(", ", new[] { Key?.Track, Key?.Driver }.Where(n => n?.Length > 0)) is { Length: > 0 } names ? names : "no track, no driver";

    /// <summary>The same with the version.</summary>
    public string Words => $"{Names}, version {Version}";
}

public sealed partial class SheetRemark
{
    /// <summary>The remark with its lengths apart.</summary>
    public Said Said => Sentence.Read(Words, TypedWords);
}
