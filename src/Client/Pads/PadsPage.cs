using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Measure;
using Spectre.Console;
using static ScaleLink.Measure.Sentences.Arguments;

namespace ScaleLink.Client.Pads;

/// <summary>The pads as a table, and their faults with the remedy below it.</summary>
internal static class PadsPage
{
    private const int LeastWidth = 60;
    private const double FinestStandardKg = 0.06;

    public static IReadOnlyList<string> Lines(Judged<ListPadsResponse> view, Shell shell, (int Width, int Height) size)
    {
        var writer = new StringWriter();
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = shell.CanRedraw ? AnsiSupport.Yes : AnsiSupport.No,
            ColorSystem = shell.HasColour ? ColorSystemSupport.Standard : ColorSystemSupport.NoColors,
            Out = new AnsiConsoleOutput(writer),
        });
        console.Profile.Width = Math.Max(LeastWidth, size.Width - 1);
        console.Profile.Capabilities.Unicode = shell.Glyphs.IsRich;
        Write(console, view, shell.Glyphs);
        return writer.ToString().TrimEnd().ReplaceLineEndings("\n").Split('\n');
    }

    private static void Write(IAnsiConsole console, Judged<ListPadsResponse> view, Glyphs glyphs)
    {
        if (view.Trouble is { } trouble)
            console.Write(new Text($"{glyphs.Tell(trouble)}\n", new Style(Color.Red)));
        if (view.Message is not { } list)
            return;
        var isLive = view.Freshness == Freshness.Live;
        if (!isLive)
            console.Write(new Text($"HELD: {(view.Age is { } age ? $"{Words.Age(age)} old" : "age not known")}\n", new Style(decoration: Decoration.Bold)));
        console.Write(new Text($"Bay {PeerText.Clean(list.Bay, 32)}\n"));
        console.Write(Table(list, isLive, glyphs));
        foreach (var pad in list.Pads)
            foreach (var fault in pad.Faults.Select(DiagnosticReader.Read))
                console.Write(new Text($"{pad.Corner.Name()}  {glyphs.Tell(fault)}\n"));
        var here = list.Pads.Where(p => p.SerialNumber.Length > 0 && !p.Calibrated).Select(p => p.Corner.Name()).ToList();
        if (here.Count > 0)
            console.Write(new Text($"Nominal only, not checked with known masses: {string.Join(", ", here)}\n"));
        foreach (var away in list.Pads.Where(p => p.SerialNumber.Length == 0))
            console.Write(new Text($"{Away(away, glyphs)}\n"));
    }

    // What a pad is calibrated to, it says once it is there; that it never was, nobody knows before.
    private static string Away(Pad pad, Glyphs glyphs) => pad.LastCalibration is { } last
        ? glyphs.Line($"{pad.Corner.Name()} is away; last calibrated {last.Time.LocalDay()} to {Kg(last.CalibratedToKg):0.#} by {PeerText.Clean(last.Who, 40)} (pad {PeerText.Clean(last.SerialNumber, 20)})")
        : $"{pad.Corner.Name()} is away; no calibration of its pad is known";

    private static Table Table(ListPadsResponse list, bool isLive, Glyphs glyphs)
    {
        var table = new Table { Border = glyphs.IsRich ? TableBorder.Simple : TableBorder.Ascii };
        foreach (var title in new[] { "Pad", "State", "Serial no.", "Rate /s", "Age", $"Load {glyphs.MassSign()}", "Pitch/roll °", "Zero" })
            table.AddColumn(new TableColumn(new Text(title)));
        foreach (var pad in list.Pads)
            table.AddRow(Cells(pad, glyphs).Select(cell => new Text(cell, new Style(decoration: isLive ? Decoration.None : Decoration.Dim))));
        return table;
    }

    private static string[] Cells(Pad pad, Glyphs glyphs) =>
    [
        pad.Corner.Name(),
        Words.State(pad.State),
        pad.SerialNumber.Length > 0 ? PeerText.Clean(pad.SerialNumber, 16) : "-",
        pad.HasMeasuredRateHz ? $"{pad.MeasuredRateHz:0}" : "-",
        pad.HasAgeMs ? Words.Age(TimeSpan.FromMilliseconds(pad.AgeMs)) : "-",
        pad.LoadKg is { } load ? Load(load, glyphs) : "-",
        pad is { HasPitchDeg: true, HasRollDeg: true } ? $"{pad.PitchDeg:0.0} / {pad.RollDeg:0.0}" : "-",
        pad.Zero?.Time is { } time ? $"{time.LocalMinute()}" : "none",
    ];

    // A single pad states its noise only; finer than a tenth its calibration would not bear it out.
    private static string Load(MeasuredValue load, Glyphs glyphs) =>
        ValueText.Live(new Value(load.Estimate, Math.Max(load.StandardUncertainty, FinestStandardKg)), glyphs.Units.Mass).Estimate;
}
