using System.Globalization;
using System.Text;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Calibration.Export;

/// <summary>Residuals against load as a drawing: way up and way down by shape, not by colour alone; with the result's limits as dashes and its uncertainty as a band.</summary>
internal static class ResidualPlot
{
    private const double Width = 640, Height = 260, Left = 64, Right = 16, Top = 14, Bottom = 38;

    /// <summary>The drawing; empty without residuals.</summary>
    public static string Draw(IReadOnlyList<Wire.ProcedurePoint> points, Wire.ProcedureResult? result = null)
    {
        List<Wire.ProcedurePoint> shown = [.. points.Where(p => p.HasResidualKg && p.HasLoadKg)];
        if (shown.Count == 0)
            return "";
        double[] reaches = [.. shown.Select(p => Math.Abs(p.ResidualKg)), .. result?.ErrorLimits.Select(l => l.LimitKg) ?? [], .. result?.Budgets.Select(b => b.ExpandedKg) ?? []];
        var most = Nice(reaches.Max());
        var highest = Math.Max(1, shown.Max(p => p.LoadKg));
        string X(double kg) => Show(Left + (Width - Left - Right) * kg / highest);
        string Y(double kg) => Show(Top + (Height - Top - Bottom) * (1 - kg / most) / 2);

        var svg = new StringBuilder($"<svg viewBox=\"0 0 {Show(Width)} {Show(Height)}\" role=\"img\" aria-label=\"Residuals against load\">\n");
        if (result is { Budgets.Count: > 1 })
            svg.Append($"<path class=\"band\" d=\"M{string.Join('L', result.Budgets.Select(b => $"{X(b.LoadKg)} {Y(b.ExpandedKg)}").Concat(result.Budgets.Reverse().Select(b => $"{X(b.LoadKg)} {Y(-b.ExpandedKg)}")))}Z\"/>\n");
        foreach (var side in (int[])[1, -1])
            svg.Append(Limits(result, side, X, Y));
        foreach (var kg in (double[])[-most, -most / 2, 0, most / 2, most])
            svg.Append($"<line x1=\"{Show(Left)}\" x2=\"{Show(Width - Right)}\" y1=\"{Y(kg)}\" y2=\"{Y(kg)}\" class=\"{(kg == 0 ? "axis" : "grid")}\"/>")
                .Append($"<text x=\"{Show(Left - 6)}\" y=\"{Y(kg)}\" dy=\"4\" text-anchor=\"end\">{ReportWords.Signed(kg)}</text>\n");
        for (var i = 0; i <= 4; i++)
            svg.Append($"<text x=\"{X(highest * i / 4)}\" y=\"{Show(Height - Bottom + 18)}\" text-anchor=\"middle\">{ReportWords.Number(highest * i / 4, "0")}</text>\n");
        foreach (var p in shown)
            svg.Append(p.WayDown
                ? $"<path d=\"M{X(p.LoadKg)} {Y(p.ResidualKg)} m-4 -4 h8 l-4 8 z\" class=\"down\"/>\n"
                : $"<path d=\"M{X(p.LoadKg)} {Y(p.ResidualKg)} m-4 4 h8 l-4 -8 z\" class=\"up\"/>\n");
        return svg.Append($"<text x=\"{Show(Width / 2)}\" y=\"{Show(Height - 4)}\" text-anchor=\"middle\">load, kg; known mass minus curve, kg; solid up: way up, open down: way down{(result is { ErrorLimits.Count: > 0 } ? "; dashes: limits of class III, e = 0.2 kg; band: 95 %" : "")}</text>\n</svg>\n").ToString();
    }

    private static string Limits(Wire.ProcedureResult? result, int side, Func<double, string> x, Func<double, string> y)
    {
        var (path, from) = ("", 0.0);
        foreach (var limit in result?.ErrorLimits ?? [])
        {
            path += $"{(path.Length == 0 ? "M" : "L")}{x(from)} {y(side * limit.LimitKg)}H{x(limit.UpToKg)}";
            from = limit.UpToKg;
        }

        return path.Length == 0 ? "" : $"<path class=\"limit\" d=\"{path}\"/>\n";
    }

    // The next of 1, 2, 5 times a power of ten, so that the scale can be read.
    private static double Nice(double most)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(most, 1e-3))));
        return power * ((double[])[1, 2, 5, 10]).First(step => step * power >= most * 0.999 || step == 10);
    }

    private static string Show(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
