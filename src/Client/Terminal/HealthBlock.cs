using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Readings;

namespace ScaleLink.Client.Terminal;

/// <summary>One line for the pads' states, and lines for what is wrong with them and how to mend it.</summary>
internal static class HealthBlock
{
    private const int MostRowsAFault = 2;

    public static void Draw(Canvas canvas, int row, int rows, Judged<ListPadsResponse>? pads)
    {
        var last = row + rows - 1;
        if (pads is not { Freshness: Freshness.Live, Message: { } list })
        {
            canvas.Put(1, last, "pads: nothing heard of their health", Ink.Faint);
            return;
        }

        DrawStates(canvas, last, list);
        DrawFaults(canvas, row, rows - 1, list);
    }

    private static void DrawStates(Canvas canvas, int row, ListPadsResponse list)
    {
        var column = canvas.Put(1, row, "pads ", Ink.Faint);
        foreach (var pad in list.Pads)
        {
            var isWell = pad.State == PadState.Live && pad.Faults.Count == 0;
            var rate = pad is { State: PadState.Live, HasMeasuredRateHz: true } ? $" {pad.MeasuredRateHz:0}/s" : "";
            var trouble = pad.Faults.Count > 0 ? $" {PeerText.Clean(pad.Faults[0].Code, 8)}" : "";
            column = canvas.Put(column + 1, row, $"{Words.Name(pad.Corner)} {Words.State(pad.State)}{trouble}{(isWell ? rate : "")} ", isWell ? Ink.Normal : Ink.Bad);
        }
    }

    private static void DrawFaults(Canvas canvas, int row, int rows, ListPadsResponse list)
    {
        var faults = list.Pads.SelectMany(p => p.Faults.Select(f => (p.Corner, Trouble: TroubleReader.Read(f))))
            .GroupBy(f => f.Trouble, f => Words.Name(f.Corner))
            .Select(g => $"{string.Join(" ", g)}  {g.Key}")
            .ToList();
        var used = 0;
        foreach (var fault in faults)
            foreach (var line in TextWrap.Lines(fault, canvas.Width - 2, MostRowsAFault))
                if (used < rows)
                    canvas.Put(1, row + used++, line, Ink.Bad);
    }
}
