using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Calibration;

/// <summary>Options that plan a calibration procedure.</summary>
internal sealed class ProcedureOptions(Glyphs glyphs)
{
    private readonly Option<string?> _masses = new("--masses") { Description = "File with the masses at hand, a line each: label, kg, class or limits. Needed to begin a calibration procedure.", HelpName = "FILE" };
    private readonly Option<string[]> _loads = new("--load") { Description = "A load of each repetition, by labels: \"20 A + 20 B\". Again for each load, lightest first. None: chosen from the masses, see --length.", HelpName = "LABELS" };
    private readonly Option<uint?> _repetitions = new("--repetitions") { Description = "Repetitions from empty to full; by the plan's length unless said otherwise.", HelpName = "N" };
    private readonly Option<uint?> _preloads = new("--preloads") { Description = "Times the highest load goes on and off first; by the plan's length unless said otherwise.", HelpName = "N" };
    private readonly Option<bool> _upOnly = new("--up-only") { Description = "Leaves the way down out: hysteresis and zero return stay unknown." };
    private readonly Option<string?> _corner = new("--corner-load") { Description = "A load to put over each cell in turn; its outcome trims the cells.", HelpName = "LABELS" };
    private readonly Option<bool> _creep = new("--creep") { Description = "Holds the highest load for 30 minutes at the end." };
    private readonly Option<double?> _reach = new("--reach") { Description = $"Carries the calibration procedure to this load with ballast in place of masses not owned, {glyphs.MassSign()}.", HelpName = "LOAD" };
    private readonly Option<double?> _perKelvin = new("--span-per-kelvin") { Description = "Change of span per kelvin by the data sheet, relative.", HelpName = "X" };

    private readonly Option<PlanLength> _length = Length();
    private readonly Option<double?> _within = new("--within") { Description = $"Expanded uncertainty (95 %) to be reached at --at, {glyphs.MassSign()}; decides whether the short plan is enough.", HelpName = "U" };
    private readonly Option<double?> _at = new("--at") { Description = $"Load at which --within is asked for, {glyphs.MassSign()}.", HelpName = "LOAD" };

    public IReadOnlyList<Option> All => [_length, _within, _at, _masses, _loads, _repetitions, _preloads, _upOnly, _corner, _creep, _reach, _perKelvin];

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
            request.ReachWithBallastKg = reach * glyphs.Units.Mass.Factor;
        request.Length = parsed.GetValue(_length);
        if (parsed.GetValue(_within) is { } within)
            request.Asked = new AskedUncertainty { ExpandedKg = within * glyphs.Units.Mass.Factor, AtKg = parsed.GetValue(_at) * glyphs.Units.Mass.Factor ?? throw new ClientException(new Diagnostic(ClientCodes.LoadWithoutLabels, "--within says nothing of a load.", "Say at which load: --within 0.5 --at 300.")) };
        if (parsed.GetValue(_perKelvin) is { } perKelvin)
            request.SpanPerKelvin = perKelvin;
        return request;
    }

    private static Option<PlanLength> Length()
    {
        var option = new Option<PlanLength>("--length")
        {
            Description = "short: up to three loads, once up and down. full: up to five loads three times, and three preloads. Unsaid: short where it is enough.", HelpName = "short|full",
            CustomParser = result => result.Tokens[0].Value == "full" ? PlanLength.Full : PlanLength.Short,
        };
        option.AcceptOnlyFromAmong("short", "full");
        return option;
    }
}
