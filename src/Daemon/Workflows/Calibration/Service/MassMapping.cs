using ScaleLink.Daemon.Journal;
using ScaleLink.Weighing.Calibration.Masses;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Calibration.Service;

/// <summary>Masses and stacks of them, from and to the words of the public API.</summary>
internal static class MassMapping
{
    private const int LongestLabel = 40;

    /// <summary>The masses of a request.</summary>
    /// <exception cref="RefusedException">SL-316, SL-317: a mass without a name or a value that makes sense.</exception>
    public static MassSet Masses(IEnumerable<Wire.KnownMass> masses) => new([.. masses.Select(Mass)]);

    public static LoadStack Stack(Wire.LoadStack stack) => new([.. stack.Masses.Select(Clean)], [.. stack.Ballast.Select(Clean)]);

    public static Wire.LoadStack Stack(LoadStack stack) => new() { Masses = { stack.Masses }, Ballast = { stack.Ballast } };

    public static Wire.MassRecord Record(KnownMass mass) => new()
    {
        Label = mass.Label,
        Kg = mass.Kg,
        ToleranceKg = mass.ToleranceKg,
        StandardUncertaintyKg = mass.StandardUncertaintyKg,
        Lot = mass.Lot,
    };

    private static KnownMass Mass(Wire.KnownMass mass)
    {
        var label = Clean(mass.Label);
        var known = mass.KnownByCase switch
        {
            Wire.KnownMass.KnownByOneofCase.WeightClass => KnownMass.OfClass(label, mass.Kg, Class(label, mass.WeightClass)),
            Wire.KnownMass.KnownByOneofCase.PlusMinus => KnownMass.Stated(label, mass.Kg, mass.PlusMinus.Kg),
            Wire.KnownMass.KnownByOneofCase.Certified => KnownMass.Certified(label, mass.Kg, mass.Certified.ExpandedUncertaintyKg,
                mass.Certified.HasCoverageFactor ? mass.Certified.CoverageFactor : 2),
            Wire.KnownMass.KnownByOneofCase.Water => KnownMass.Water(label, mass.Water.Litres, mass.Water.PlusMinusLitres,
                mass.Water.HasTemperatureC ? mass.Water.TemperatureC : null),
            _ => throw new StepRefusedException(CalibrationCodes.MassWithoutTolerance.Because($"{label}, {Kg(mass.Kg)}: nothing says how well it is known")),
        };
        return mass.HasLot ? known with { Lot = Clean(mass.Lot) } : known;
    }

    private static WeightClass Class(string label, string name) =>
        Enum.TryParse<WeightClass>(name, ignoreCase: true, out var weightClass) && Enum.IsDefined(weightClass) && !char.IsDigit(name[0])
            ? weightClass
            : throw new StepRefusedException(CalibrationCodes.MassWithoutTolerance.Because($"{label}: there is no class {Clean(name)}"));

    private static string Clean(string text) => PlainText.Clean(text, LongestLabel);
}
