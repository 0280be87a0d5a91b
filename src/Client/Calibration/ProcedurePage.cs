using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;
using static ScaleLink.Measure.Sentences.Arguments;
using Sentence = ScaleLink.Measure.Sentences.Sentence;

namespace ScaleLink.Client.Calibration;

/// <summary>What the page shows besides the calibration procedure itself.</summary>
/// <param name="Automatic">Steps are recorded by themselves.</param>
/// <param name="Message">Answer to the last key.</param>
/// <param name="Typing">What is being typed, with its question; absent when nothing is asked.</param>
internal sealed record ProcedurePageState(bool Automatic, string Message, string? Typing);

/// <summary>A calibration procedure on a terminal: what to do now in large, how the load rests, residuals; at the end the outcome.</summary>
internal static class ProcedurePage
{
    private const int BigRow = 4;
    private const int BarWidth = 20;
    private const int PlotRow = 12;
    private const int FootRows = 4;
    private const int MostLines = 3;
    private const int FewestPlotRows = 6, MostPlotRows = 14;

    public static Canvas Draw(Judged<ProcedureView> view, ProcedurePageState state, (int Width, int Height) size, Glyphs glyphs)
    {
        var canvas = new Canvas(size.Width, size.Height);
        var isLive = view.Freshness == Freshness.Live;
        if (view.Message is { } procedure)
        {
            if (procedure.State == ProcedureState.Measuring && procedure.Step is { } step)
                Measuring(canvas, procedure, step, isLive, glyphs);
            else if (procedure.Result is { } result)
                Review(canvas, procedure, result, glyphs);
            Header(canvas, procedure);
        }

        if (!isLive)
        {
            canvas.Fade();
            canvas.PutBefore(canvas.Width - 1, 0, view.Freshness == Freshness.Held ? "HELD" : "ABSENT", Ink.Bad);
        }

        Foot(canvas, view, state, glyphs);
        return canvas;
    }

    private static void Header(Canvas canvas, ProcedureView procedure)
    {
        var after = canvas.Put(1, 0, $"{procedure.Corner.Name()}  {PeerText.Clean(procedure.SerialNumber, 20)}  procedure {PeerText.Clean(procedure.ProcedureId, 10)}", Ink.Strong);
        if (procedure.Step is { } step)
            canvas.Put(after + 3, 0, $"step {step.Number} of {step.Of}, {ProcedureWords.Part(step.Stage, step.Repetition, step.WayDown)}");
    }

    private static void Measuring(Canvas canvas, ProcedureView procedure, ProcedureStep step, bool isLive, Glyphs glyphs)
    {
        var isReady = procedure.Ready && isLive;
        Lines(canvas, 1, 2, [Capital(ProcedureWords.Order(step))], Ink.Strong);
        // The figures first: a long list of masses ends at the edge.
        var change = step.HasChangeKg ? (Sentence)$" (change {Kg(step.ChangeKg):+0.###})" : default;
        canvas.Put(1, 3, PeerText.Clean(glyphs.Line($"then {Kg(step.LoadKg):0.###} on the pad{change}: {StackText.Of(step.Load)}"), canvas.Width - 2));
        var end = procedure.Reading is { HasLoadKg: true } reading
            ? BigText.Draw(canvas, 1, BigRow, glyphs.Kg(reading.LoadKg, "0.00"), isReady ? glyphs.Solid : glyphs.Medium, isReady ? Ink.Good : Ink.Normal)
            : BigText.Draw(canvas, 1, BigRow, "--.--", glyphs.Faint, Ink.Faint);
        canvas.Put(end, BigRow + BigText.Rows - 1, glyphs.MassSign());
        Rest(canvas, Math.Max(end + 4, 46), procedure, step, isReady, glyphs);
        if (procedure.WaitingFor is { } why && !procedure.Ready)
            Lines(canvas, BigRow + BigText.Rows, PlotRow - BigRow - BigText.Rows, [ProcedureWords.Waiting(why, glyphs)], Ink.Uncertain);
        if (procedure.Points.Any(p => p.HasResidualKg))
            ResidualPicture.Draw(canvas, PlotRow, canvas.Height - PlotRow - FootRows, procedure.Points, glyphs);
        else
            // Before the curve there is room, and the first masses are about to be lifted.
            Lines(canvas, PlotRow, canvas.Height - PlotRow - FootRows, Forecast(procedure, glyphs).Concat(procedure.Cautions.Select(c => $"Caution: {PeerText.Clean(c, 200)}")), Ink.Uncertain);
    }

    private static IEnumerable<string> Forecast(ProcedureView procedure, Glyphs glyphs) => procedure.Forecast is { } forecast
        ? [ForecastLines.Of(forecast, procedure.HasLiftsLeft ? (procedure.LiftsLeft, procedure.LiftedLeftKg) : null, glyphs)]
        : [];

    private static void Review(Canvas canvas, ProcedureView procedure, ProcedureResult result, Glyphs glyphs)
    {
        var row = 2 + Lines(canvas, 2, canvas.Height - 2 - FootRows, ResultLines.Of(result, glyphs));
        if (canvas.Height - FootRows - row - 1 is >= FewestPlotRows and var rows)
            ResidualPicture.Draw(canvas, row + 1, Math.Min(rows, MostPlotRows), procedure.Points, glyphs, result);
    }

    private static void Rest(Canvas canvas, int column, ProcedureView procedure, ProcedureStep step, bool isReady, Glyphs glyphs)
    {
        var progress = procedure.Reading?.Settling ?? 0;
        var full = (int)Math.Round(progress * BarWidth);
        canvas.Put(column, BigRow, "at rest");
        canvas.Put(column, BigRow + 1, new string(glyphs.Solid, full) + new string(glyphs.Faint, BarWidth - full), progress >= 1 ? Ink.Good : Ink.Normal);
        // Whether a load was moved to its place, a reading cannot tell in every case: the person says so.
        var said = (isReady, step.Untold) switch
        {
            (true, true) => "AT REST: Enter once it is done",
            (true, false) => "READY: Enter records",
            _ => "not yet",
        };
        canvas.Put(column, BigRow + 2, said, isReady ? Ink.Good : Ink.Normal);
        canvas.Put(column, BigRow + 3, step.HasHeldSoFarMinutes ? $"held {step.HeldSoFarMinutes:0.0} of {step.HeldMinutes} min" : $"usual wait {step.SettlingS:0} s", Ink.Faint);
        if (step.Spot.Length > 0 && procedure.Reading is { CellShares: { Count: > 0 } shares })
            canvas.Put(column, BigRow + 4, $"cells {string.Join(" ", shares.Select((share, i) => $"{i + 1}: {100 * share:0}"))} %");
    }

    private static void Foot(Canvas canvas, Judged<ProcedureView> view, ProcedurePageState state, Glyphs glyphs)
    {
        var row = canvas.Height - FootRows;
        var trouble = view.Freshness == Freshness.Live ? state.Message : view.Trouble is { } wrong ? glyphs.Tell(wrong) : "waiting for the daemon; the calibration procedure is kept";
        Lines(canvas, row, 2, [trouble], view.Freshness == Freshness.Live ? Ink.Uncertain : Ink.Bad);
        if (state.Typing is { } typing)
            canvas.Put(1, row + 2, typing, Ink.Strong);
        var keys = view.Message?.State switch
        {
            ProcedureState.Measuring when ProcedureWords.IsSaidToBeEmpty(view.Message) => "e it is empty all the same  s skip  b back  f finish  Ctrl-C later",
            ProcedureState.Measuring => $"Enter record  a auto {(state.Automatic ? "on" : "off")}  b back  s skip  r repeat  f finish  Ctrl-C later",
            ProcedureState.Review => "y adopt  n reject  b take the last point again  Ctrl-C decide later",
            _ => "Ctrl-C ends",
        };
        canvas.Put(1, canvas.Height - 1, keys, Ink.Faint);
    }

    private static int Lines(Canvas canvas, int row, int rows, IEnumerable<string> texts, Ink ink = Ink.Normal)
    {
        // Tables keep their spaces; only what is too wide is broken.
        List<string> lines = [.. texts.SelectMany(t => t.Length < canvas.Width - 1 ? [t] : TextWrap.Lines(t, canvas.Width - 2, Math.Min(MostLines, rows))).Take(rows)];
        foreach (var (index, line) in lines.Index())
            canvas.Put(1, row + index, line, ink);
        return lines.Count;
    }

    private static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
