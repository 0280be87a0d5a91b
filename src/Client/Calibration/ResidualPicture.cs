using ScaleLink.Api.V1;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;

namespace ScaleLink.Client.Calibration;

/// <summary>Residuals against load: known mass minus curve. Way up and way down by their sign, not by colour.</summary>
internal static class ResidualPicture
{
    private const int Margin = 9;
    private const double FinestScaleKg = 0.02;

    /// <summary>Draws into rows of a canvas; says that nothing can be drawn yet while there is no curve.</summary>
    public static void Draw(Canvas canvas, int row, int rows, IReadOnlyList<ProcedurePoint> points, Glyphs glyphs)
    {
        List<ProcedurePoint> shown = [.. points.Where(p => p is { HasResidualKg: true, HasLoadKg: true })];
        if (shown.Count == 0)
        {
            canvas.Put(1, row, "residuals: after three different loads and a few points more", Ink.Faint);
            return;
        }

        var most = Math.Max(FinestScaleKg, shown.Max(p => Math.Abs(p.ResidualKg)));
        var highest = Math.Max(1, shown.Max(p => p.LoadKg));
        var (top, height, width) = (row + 1, rows - 2, canvas.Width - Margin - 2);
        canvas.Put(1, row, $"residuals, kg: known mass minus curve   {glyphs.High} way up  {glyphs.Low} way down", Ink.Faint);
        for (var x = 0; x < width; x++)
            canvas.Put(Margin + x, top + height / 2, glyphs.Rule, Ink.Faint);
        canvas.PutBefore(Margin - 1, top, $"{most:+0.000}", Ink.Faint);
        canvas.PutBefore(Margin - 1, top + height / 2, "0", Ink.Faint);
        canvas.PutBefore(Margin - 1, top + height - 1, $"{-most:0.000}", Ink.Faint);
        canvas.Put(Margin, top + height, "0", Ink.Faint);
        canvas.PutBefore(Margin + width, top + height, $"{highest:0} kg", Ink.Faint);
        foreach (var p in shown)
        {
            var x = Margin + (int)Math.Round(p.LoadKg / highest * (width - 1));
            var y = top + (int)Math.Round((1 - p.ResidualKg / most) / 2 * (height - 1));
            canvas.Put(x, y, p.WayDown ? glyphs.Low : glyphs.High, Ink.Strong);
        }
    }
}
