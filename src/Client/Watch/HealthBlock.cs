using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;

namespace ScaleLink.Client.Watch;

/// <summary>One line for the pads' states, and lines for what is wrong with them and what to do about it.</summary>
internal static class HealthBlock
{
    private const int MostRowsAFault = 2;
    private const int LeastWidth = 10;
    private const string Head = "pads ";

    public static void Draw(Canvas canvas, int row, int rows, WatchScene scene, Glyphs glyphs)
    {
        var last = row + rows - 1;
        if (scene.Loads.Trouble is { } trouble)
        {
            DrawLines(canvas, row, TextWrap.Lines(glyphs.Tell(trouble), Room(canvas), rows));
            return;
        }

        if (scene.Pads is not { Freshness: Freshness.Live, Message: { } list })
        {
            canvas.Put(1, last, "pads: nothing heard of their health", Ink.Faint);
            return;
        }

        DrawStates(canvas, last, list);
        DrawLines(canvas, row, [.. Faults(list, Room(canvas), glyphs).Take(rows - 1)]);
    }

    private static void DrawStates(Canvas canvas, int row, ListPadsResponse list)
    {
        // What does not fit loses its rates, then the pads that are well.
        var room = canvas.Width - Head.Length - 1;
        List<(string Text, bool IsWell)> all = [.. list.Pads.Select(p => State(p, hasRate: true))];
        if (Width(all) > room)
            all = [.. list.Pads.Select(p => State(p, hasRate: false))];
        if (Width(all) > room)
            all = [.. all.Where(p => !p.IsWell), ($"{all.Count(p => p.IsWell)} live", true)];
        var column = canvas.Put(1, row, Head, Ink.Faint);
        foreach (var (text, isWell) in all)
            column = canvas.Put(column + 1, row, $"{text} ", isWell ? Ink.Normal : Ink.Bad);
    }

    private static int Width(List<(string Text, bool IsWell)> states) => states.Sum(s => s.Text.Length + 2);

    private static (string Text, bool IsWell) State(Pad pad, bool hasRate)
    {
        var isWell = pad.State == PadState.Live && pad.Faults.Count == 0;
        var rate = hasRate && isWell && pad.HasMeasuredRateHz ? $" {pad.MeasuredRateHz:0}/s" : "";
        var trouble = pad.Faults.Count > 0 ? $" {PeerText.Clean(pad.Faults[0].Code, 8)}" : "";
        return ($"{pad.Corner.Name()} {Words.State(pad.State)}{trouble}{rate}", isWell);
    }

    private static int Room(Canvas canvas) => Math.Max(LeastWidth, canvas.Width - 2);

    // Pads that share a fault share its lines.
    private static IEnumerable<string> Faults(ListPadsResponse list, int width, Glyphs glyphs) =>
        list.Pads.SelectMany(p => p.Faults.Select(f => (p.Corner, Trouble: DiagnosticReader.Read(f))))
            .GroupBy(f => f.Trouble, f => f.Corner.Name())
            .SelectMany(g => TextWrap.Lines($"{string.Join(" ", g)}  {glyphs.Tell(g.Key)}", width, MostRowsAFault));

    private static void DrawLines(Canvas canvas, int row, IReadOnlyList<string> lines)
    {
        for (var i = 0; i < lines.Count; i++)
            canvas.Put(1, row + i, lines[i], Ink.Bad);
    }
}
