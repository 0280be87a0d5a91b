using System.Globalization;
using System.Text.RegularExpressions;
using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Calibration;

/// <summary>
/// The masses at hand, a line each: label, mass, how it is known, and perhaps the lot. The mass is in kg, in lb where that stands
/// behind it, or a volume of water such as "60 l" or "60 l at 15 C". Known by a class ("M1", of a nominal value in kg), by limits ("within 0.02", in the
/// unit of the mass), by a certificate ("U 0.0006 k 2", in the unit of the mass), or by an interval of 95 % ("+-0.001", the same with k = 1.96).
/// </summary>
internal static partial class MassFile
{
    private const int MostMasses = 200, MostTold = 12;
    private const string Example = "Write lines like: 20 A, 20, M1";

    /// <summary>Reads a file.</summary>
    /// <exception cref="ClientException">SL-440 the file cannot be read; SL-448 a line is not understood.</exception>
    public static IReadOnlyList<KnownMass> Load(string path)
    {
        try
        {
            return Parse(File.ReadAllLines(path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ClientException(new Diagnostic(ClientCodes.FileUnreadable, $"The list of masses cannot be read: {e.Message}", "Look at the path and its permissions."), e);
        }
    }

    /// <summary>Reads the lines; empty ones and those that begin with # are passed over.</summary>
    public static IReadOnlyList<KnownMass> Parse(IReadOnlyList<string> lines)
    {
        var read = lines.Index().Select(l => (Number: l.Index + 1, Text: l.Item.Trim())).Where(l => l.Text.Length > 0 && l.Text[0] != '#').Select(l => (l.Number, l.Text, Mass: Line(l.Text))).ToList();
        var mistakes = read.Where(l => l.Mass is null).ToList();
        if (mistakes.Count > 0)
            throw new ClientException(new Diagnostic(ClientCodes.MassesNotUnderstood,
                $"{(mistakes.Count == 1 ? "Line" : "Lines")} {string.Join(", ", mistakes.Select(m => m.Number))} of the masses {(mistakes.Count == 1 ? "is" : "are")} not understood: {string.Join(", ", mistakes.Take(MostTold).Select(m => $"\"{PeerText.Clean(m.Text, 60)}\""))}.",
                $"{Example}; 50 B, 50.003, U 0.002 k 2; plate, 25, within 0.1; disc, 45 lb, within 0.5; drum, 60 l, within 0.2."));
        var masses = read.ConvertAll(l => l.Mass!);
        return masses.Count is > 0 and <= MostMasses
            ? masses
            : throw new ClientException(new Diagnostic(ClientCodes.MassesNotUnderstood, $"The list holds {masses.Count} masses.", $"{Example}; at most {MostMasses}."));
    }

    private static KnownMass? Line(string line)
    {
        var fields = line.Split(',', StringSplitOptions.TrimEntries);
        if (fields.Length is not (3 or 4) || fields[0].Length == 0 || MassPattern().Match(fields[1]) is not { Success: true } size)
            return null;
        var mass = new KnownMass { Label = fields[0] };
        if (fields.Length == 4)
            mass.Lot = fields[3];
        var isWater = size.Groups["unit"].Value == "l";
        var kgPerUnit = size.Groups["unit"].Value == "lb" ? Measure.Unit.Pound.Factor : 1;
        var value = Number(size.Groups["value"].Value);
        if (!isWater)
            mass.Kg = value * kgPerUnit;
        if (!Known(mass, fields[2], isWater ? value : null, kgPerUnit))
            return null;
        if (isWater && size.Groups["celsius"] is { Success: true } celsius)
            mass.Water.TemperatureC = Number(celsius.Value);
        return mass;
    }

    private static bool Known(KnownMass mass, string by, double? litres, double kgPerUnit)
    {
        if (LimitsPattern().Match(by) is { Success: true } limits)
        {
            var either = Number(limits.Groups["value"].Value);
            if (litres is { } volume)
                mass.Water = new WaterVolume { Litres = volume, PlusMinusLitres = either };
            else
                mass.PlusMinus = new PlusMinus { Kg = either * kgPerUnit };
            return true;
        }

        if (litres is not null)
            return false;
        if (CertificatePattern().Match(by) is { Success: true } certificate)
        {
            mass.Certified = new CertifiedMass { ExpandedUncertaintyKg = Number(certificate.Groups["u"].Value) * kgPerUnit };
            if (certificate.Groups["k"].Success)
                mass.Certified.CoverageFactor = Number(certificate.Groups["k"].Value);
            return true;
        }

        if (IntervalPattern().Match(by) is { Success: true } interval)
        {
            mass.Certified = new CertifiedMass { ExpandedUncertaintyKg = Number(interval.Groups["value"].Value) * kgPerUnit, CoverageFactor = Measure.Coverage.Factor() };
            return true;
        }

        // The classes are of nominal values in kg.
        mass.WeightClass = by;
        return kgPerUnit == 1 && ClassPattern().IsMatch(by);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?<value>\d{1,5}(\.\d{1,9})?)\s*(kg|(?<unit>lb)|(?<unit>l)(\s+at\s+(?<celsius>\d{1,2}(\.\d{1,3})?)\s*°?C)?)?$")]
    private static partial Regex MassPattern();

    [GeneratedRegex(@"^within\s+(?<value>\d{1,5}(\.\d{1,9})?)$")]
    private static partial Regex LimitsPattern();

    // Wherever a plus-minus stands it is an interval of 95 %; a limit is called one.
    [GeneratedRegex(@"^(±|\+-|\+/-)\s*(?<value>\d{1,5}(\.\d{1,9})?)$")]
    private static partial Regex IntervalPattern();

    [GeneratedRegex(@"^U\s*=?\s*(?<u>\d{1,5}(\.\d{1,9})?)(\s*,?\s*k\s*=?\s*(?<k>\d(\.\d{1,3})?))?$")]
    private static partial Regex CertificatePattern();

    [GeneratedRegex("^(E2|F1|F2|M1|M2|M3)$")]
    private static partial Regex ClassPattern();
}
