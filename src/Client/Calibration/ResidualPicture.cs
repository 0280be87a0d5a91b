using ScaleLink.Api.V1;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;

namespace ScaleLink.Client.Calibration;

/// <summary>
/// Residuals against load in characters: way up and way down by shape. Once there is a result, the error limits of class III as dashes and the band
/// of the uncertainty (95 %) as dots, so that what is small looks small.
/// </summary>
internal static class ResidualPicture
{
    private const int Margin = 9;
    private const double FinestScaleKg = 0.02;

    /// <summary>Draws into rows of a canvas; says that nothing can be drawn yet while there is no curve.</summary>
    public static void Draw(Canvas canvas, int row, int rows, IReadOnlyList<ProcedurePoint> points, Glyphs glyphs, ProcedureResult? result = null)
    {
        List<ProcedurePoint> shown = [.. points.Where(p => p is { HasResidualKg: true, HasLoadKg: true })];
        if (shown.Count == 0)
        {
            canvas.Put(1, row, "residuals: after three different loads and a few points more", Ink.Faint);
            return;
        }

        var (limits, band) = (result?.ErrorLimits.ToList() ?? [], result?.Budgets.ToList() ?? []);
        double[] reaches = [FinestScaleKg, shown.Max(p => Math.Abs(p.ResidualKg)), .. limits.Select(l => l.LimitKg), .. band.Select(b => b.ExpandedKg)];
        var most = reaches.Max();
        var highest = Math.Max(1, shown.Max(p => p.LoadKg));
        var (top, height, width) = (row + 1, rows - 2, canvas.Width - Margin - 2);
        int Y(double kg) => top + (int)Math.Round((1 - kg / most) / 2 * (height - 1));
        canvas.Put(1, row, $"residuals, {glyphs.MassSign()}: known mass minus curve   {glyphs.High} way up  {glyphs.Low} way down{(limits.Count > 0 ? "  - limit  . 95 %" : "")}", Ink.Faint);
        for (var x = 0; x < width; x++)
        {
            canvas.Put(Margin + x, top + height / 2, glyphs.Rule, Ink.Faint);
            var kg = highest * x / Math.Max(1, width - 1);
            if (x % 2 == 0 && limits.FirstOrDefault(l => kg <= l.UpToKg) is { } limit)
                Both(limit.LimitKg, '-');
            else if (Band(band, kg) is { } expanded)
                Both(expanded, '.');

            void Both(double size, char sign)
            {
                canvas.Put(Margin + x, Y(size), sign, Ink.Faint);
                canvas.Put(Margin + x, Y(-size), sign, Ink.Faint);
            }
        }

        canvas.PutBefore(Margin - 1, top, glyphs.Kg(most, "+0.000"), Ink.Faint);
        canvas.PutBefore(Margin - 1, top + height / 2, "0", Ink.Faint);
        canvas.PutBefore(Margin - 1, top + height - 1, glyphs.Kg(-most, "0.000"), Ink.Faint);
        canvas.Put(Margin, top + height, "0", Ink.Faint);
        canvas.PutBefore(Margin + width, top + height, $"{glyphs.Kg(highest, "0")} {glyphs.MassSign()}", Ink.Faint);
        foreach (var p in shown)
            canvas.Put(Margin + (int)Math.Round(p.LoadKg / highest * (width - 1)), Y(p.ResidualKg), p.WayDown ? glyphs.Low : glyphs.High, Ink.Strong);
    }

    // Straight between the loads that the result states it for; below the first it is not stated.
    private static double? Band(List<LoadBudget> band, double kg)
    {
        var after = band.FindIndex(b => b.LoadKg >= kg);
        if (after < 1)
            return after == 0 && band[0].LoadKg == kg ? band[0].ExpandedKg : null;
        var (from, to) = (band[after - 1], band[after]);
        return from.ExpandedKg + (to.ExpandedKg - from.ExpandedKg) * (kg - from.LoadKg) / (to.LoadKg - from.LoadKg);
    }
}
