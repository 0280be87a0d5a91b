using ScaleLink.Api.V1;
using ScaleLink.Client.Runtime;
using ScaleLink.Measure;

namespace ScaleLink.Client.Readings;

/// <summary>The live values of one screen, each by the place where it stands: the number of its digits changes only after two seconds.</summary>
internal sealed class SteadyTexts(TimeProvider time)
{
    private readonly Dictionary<string, SteadyText> _texts = [];

    /// <summary>A load, or a difference of loads.</summary>
    public ValueText Kg(string place, MeasuredValue value, Glyphs glyphs, bool isSigned = false) => At(place).Show(value.AsValue, glyphs.Units.Mass, isSigned);

    /// <summary>A share of the total.</summary>
    public ValueText Percent(string place, MeasuredValue value) => At(place).Show(value.AsValue, Unit.Percent);

    private SteadyText At(string place) => _texts.TryGetValue(place, out var known) ? known : _texts[place] = new SteadyText(time);
}
