using System.CommandLine;
using ScaleLink.Api.V1;

namespace ScaleLink.Client.Calibration;

/// <summary>Options that plan a calibration procedure.</summary>
internal sealed class ProcedureOptions
{
    private readonly Option<string?> _masses = new("--masses") { Description = "File with the masses at hand, a line each: label, kg, class or limits. Needed to begin a calibration procedure.", HelpName = "FILE" };
    private readonly Option<string[]> _loads = new("--load") { Description = "A load of each repetition, by labels: \"20 A + 20 B\". Again for each load, lightest first. None: up to five are chosen.", HelpName = "LABELS" };
    private readonly Option<uint?> _repetitions = new("--repetitions") { Description = "Repetitions from empty to full; 3 unless said otherwise.", HelpName = "N" };
    private readonly Option<uint?> _preloads = new("--preloads") { Description = "Times the highest load goes on and off first; 3 unless said otherwise.", HelpName = "N" };
    private readonly Option<bool> _upOnly = new("--up-only") { Description = "Leaves the way down out: hysteresis and zero return stay unknown." };
    private readonly Option<string?> _corner = new("--corner-load") { Description = "A load to put over each cell in turn; its outcome trims the cells.", HelpName = "LABELS" };
    private readonly Option<bool> _creep = new("--creep") { Description = "Holds the highest load for 30 minutes at the end." };
    private readonly Option<double?> _reach = new("--reach") { Description = "Carries the calibration procedure to this load with ballast in place of masses not owned.", HelpName = "KG" };
    private readonly Option<double?> _perKelvin = new("--span-per-kelvin") { Description = "Change of span per kelvin by the data sheet, relative.", HelpName = "X" };

    public IReadOnlyList<Option> All => [_masses, _loads, _repetitions, _preloads, _upOnly, _corner, _creep, _reach, _perKelvin];

    /// <summary>The plan of the command line; nothing without masses.</summary>
    public StartProcedureRequest? Read(ParseResult parsed)
    {
        if (parsed.GetValue(_masses) is not { } file)
            return null;
        var request = new StartProcedureRequest { WayDown = !parsed.GetValue(_upOnly), CreepTest = parsed.GetValue(_creep) };
        request.Masses.AddRange(MassFile.Load(file));
        request.Loads.AddRange((parsed.GetValue(_loads) ?? []).Select(StackText.Parse));
        if (parsed.GetValue(_repetitions) is { } repetitions)
            request.Repetitions = repetitions;
        if (parsed.GetValue(_preloads) is { } preloads)
            request.Preloads = preloads;
        if (parsed.GetValue(_corner) is { } corner)
            request.CornerLoad = StackText.Parse(corner);
        if (parsed.GetValue(_reach) is { } reach)
            request.ReachWithBallastKg = reach;
        if (parsed.GetValue(_perKelvin) is { } perKelvin)
            request.SpanPerKelvin = perKelvin;
        return request;
    }
}
