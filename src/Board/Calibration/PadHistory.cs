using ScaleLink.Api.V1;
using ScaleLink.Board.Drawing;

namespace ScaleLink.Board.Calibration;

/// <summary>One calibration of a pad against its first one.</summary>
/// <param name="Number">Of the procedure that made it.</param>
/// <param name="ZeroKg">How far the empty pad had moved, kg.</param>
/// <param name="SpanPercent">How far its span had, percent.</param>
/// <param name="InEffect">It makes the loads now.</param>
internal readonly record struct HistoryMark(string Number, double ZeroKg, double SpanPercent, bool InEffect);

/// <summary>How a pad's zero and span have moved from one calibration to the next, and where that stands in a small picture.</summary>
internal sealed record PadHistory(IReadOnlyList<HistoryMark> Marks)
{
    public const double Width = 560, Height = 86, Left = 70, Right = 540, Middle = 38, Reach = 26;

    /// <summary>Of calibrations in any order; those that the bay file states and those that came into effect again are left out.</summary>
    public static PadHistory Of(IEnumerable<CalibrationSummary> calibrations)
    {
        var made = calibrations.Where(c => c.Standing == CalibrationStanding.Calibrated && c.ProcedureId.Length > 0).DistinctBy(c => c.Id).OrderBy(c => c.Time.ToDateTime()).ToList();
        if (made.Count == 0)
            return new PadHistory([]);
        var first = made[0];
        // Other trims change the sum of the counts; for a load in the middle by the ratio of their means.
        double Trims(CalibrationSummary c) => c.CellTrim.Count == 0 || first.CellTrim.Count == 0 ? 1 : c.CellTrim.Average() / first.CellTrim.Average();
        return new PadHistory(
        [
            .. made.Select(c => new HistoryMark(
                c.ProcedureId, (c.ZeroCounts / Trims(c) - first.ZeroCounts) * first.SpanKgPerCount, 100 * (c.SpanKgPerCount * Trims(c) / first.SpanKgPerCount - 1), c.InEffect)),
        ]);
    }

    /// <summary>The farthest of these either way, at least <paramref name="finest"/>.</summary>
    public double Farthest(Func<HistoryMark, double> of, double finest) => Marks.Select(m => Math.Abs(of(m))).Append(finest).Max();

    /// <summary>Place of a mark from left to right.</summary>
    public double X(int index) => Left + 14 + (Right - Left - 28) * (Marks.Count < 2 ? 0.5 : (double)index / (Marks.Count - 1));

    /// <summary>Place of a value, <paramref name="farthest"/> at the edge.</summary>
    public static double Y(double value, double farthest) => Middle - Reach * value / farthest;

    /// <summary>The line through the marks.</summary>
    public string Way(Func<HistoryMark, double> of, double farthest) =>
        $"M{string.Join('L', Marks.Select((m, i) => $"{Svg.N(X(i))} {Svg.N(Y(of(m), farthest))}"))}";
}
