using System.Globalization;
using System.Text;
using ScaleLink.Daemon.Reports;
using ScaleLink.Daemon.Workflows.WorkSessions.Standings;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Export;

/// <summary>
/// The convergence trace as a picture (SVG): the target band, each prediction as a hollow bar as tall as its uncertainty, the point
/// that was read then. Told apart by shape, so that it prints in black and white.
/// </summary>
internal static class TraceDrawing
{
    private const double Width = 640, Height = 240, Left = 48, Right = 16, Top = 24, Bottom = 46;

    public static string Of(WorkSession session)
    {
        var points = SessionTrace.Of(session);
        var (target, tolerance) = (session.Start.TargetPercent, session.Start.TolerancePercent);
        var values = points.Select(p => p.CrossWeightPercent).Concat(points.Select(p => p.PredictedPercent?.Estimate ?? target)).Append(target - 2 * tolerance).Append(target + 2 * tolerance).ToList();
        var (low, high) = (values.Min() - tolerance, values.Max() + tolerance);
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg viewBox=\"0 0 {Width} {Height}\" role=\"img\" aria-label=\"Cross weight against readings\" font-family=\"sans-serif\" font-size=\"10\">");
        svg.Append(CultureInfo.InvariantCulture, $"<rect x=\"{Left}\" y=\"{Y(target + tolerance):0.#}\" width=\"{Width - Left - Right}\" height=\"{Y(target - tolerance) - Y(target + tolerance):0.#}\" fill=\"#ddd\"/>");
        Line(svg, Left, Y(target), Width - Right, Y(target), "#666", "4 3");
        Line(svg, Left, Top, Left, Height - Bottom, "#111", "");
        foreach (var tick in Ticks(low, high))
        {
            Line(svg, Left - 4, Y(tick), Left, Y(tick), "#111", "");
            Text(svg, Left - 7, Y(tick) + 3, "end", tick.ToString("0.##", CultureInfo.InvariantCulture));
        }

        Text(svg, 4, 10, "start", "Cross weight (RF + LR) / total, %");
        for (var i = 0; i < points.Count; i++)
            Point(svg, points[i], X(i, points.Count), i > 0 ? (X(i - 1, points.Count), Y(points[i - 1].CrossWeightPercent)) : null, Y);
        return svg.Append("</svg>").ToString();

        double Y(double percent) => Top + (Height - Top - Bottom) * (high - percent) / (high - low);
    }

    private static double X(int index, int count) => Left + 24 + (Width - Left - Right - 48) * (count > 1 ? (double)index / (count - 1) : 0.5);

    private static void Point(StringBuilder svg, TracePoint point, double x, (double X, double Y)? before, Func<double, double> y)
    {
        var at = y(point.CrossWeightPercent);
        if (before is { } b)
            Line(svg, b.X, b.Y, x, at, "#999", "");
        if (point.PredictedPercent is { } predicted)
        {
            var (top, bottom) = (y(predicted.Estimate + predicted.HalfWidth()), y(predicted.Estimate - predicted.HalfWidth()));
            svg.Append(CultureInfo.InvariantCulture, $"<rect x=\"{x - 7:0.#}\" y=\"{top:0.#}\" width=\"14\" height=\"{Math.Max(1, bottom - top):0.#}\" fill=\"none\" stroke=\"#111\" stroke-dasharray=\"2 2\"/>");
        }

        Line(svg, x, y(point.CrossWeightPercent + point.ExpandedPercent), x, y(point.CrossWeightPercent - point.ExpandedPercent), "#111", "");
        svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{x:0.#}\" cy=\"{at:0.#}\" r=\"4\" fill=\"#111\"/>");
        svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{x:0.#}\" y=\"{Height - Bottom + 14}\" text-anchor=\"middle\" data-weighing=\"{point.Number}\">{point.Number}</text>");
        if (point.Label.Length > 0)
            svg.Append(CultureInfo.InvariantCulture, $"<text transform=\"translate({x:0.#} {Height - Bottom + 24}) rotate(8)\" font-size=\"7\" text-anchor=\"middle\">{Html.Escape(point.Label)}</text>");
    }

    private static IEnumerable<double> Ticks(double low, double high)
    {
        var step = new[] { 0.1, 0.2, 0.5, 1, 2, 5, 10 }.First(s => s >= 10 || (high - low) / s <= 8);
        for (var tick = Math.Ceiling(low / step) * step; tick <= high; tick += step)
            yield return Math.Round(tick, 6);
    }

    private static void Line(StringBuilder svg, double x1, double y1, double x2, double y2, string colour, string dashes) => svg.Append(CultureInfo.InvariantCulture,
        $"<line x1=\"{x1:0.#}\" y1=\"{y1:0.#}\" x2=\"{x2:0.#}\" y2=\"{y2:0.#}\" stroke=\"{colour}\"{(dashes.Length > 0 ? $" stroke-dasharray=\"{dashes}\"" : "")}/>");

    private static void Text(StringBuilder svg, double x, double y, string anchor, string text) =>
        svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{x:0.#}\" y=\"{y:0.#}\" text-anchor=\"{anchor}\">{Html.Escape(text)}</text>");
}
