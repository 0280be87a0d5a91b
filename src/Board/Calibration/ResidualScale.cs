using ScaleLink.Api.V1;
using ScaleLink.Board.Drawing;

namespace ScaleLink.Board.Calibration;

/// <summary>Places of the residual plot: load from left to right, known mass minus curve upwards.</summary>
internal sealed record ResidualScale(double HighestLoad, double Reach)
{
    public const double Width = 560, Height = 260, Left = 70, Right = 540, Top = 16, Bottom = 214;
    private const double LeastReach = 0.01;
    private static readonly double[] Steps = [0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10];

    /// <summary>With room for every residual and, once there is a result, for its limits and its band.</summary>
    public static ResidualScale For(IEnumerable<ProcedurePoint> points, double highestLoad, ProcedureResult? result = null)
    {
        double[] reaches = [0, .. points.Where(p => p.HasResidualKg).Select(p => Math.Abs(p.ResidualKg)), .. result?.ErrorLimits.Select(l => l.LimitKg) ?? [], .. result?.Budgets.Select(b => b.ExpandedKg) ?? []];
        var farthest = reaches.Max();
        return new ResidualScale(Math.Max(highestLoad, 1), Math.Max(LeastReach, 1.15 * farthest));
    }

    public static double Middle => (Top + Bottom) / 2;

    public double X(double load) => Left + Math.Clamp(load / HighestLoad, 0, 1) * (Right - Left - 16) + 8;

    public double Y(double residual) => Middle - residual / Reach * (Bottom - Top) / 2;

    /// <summary>The limits as steps from the left, above the middle or below it.</summary>
    /// <param name="limits">From zero up.</param>
    /// <param name="side">1 above, -1 below.</param>
    public string Limits(IEnumerable<ErrorLimit> limits, int side)
    {
        var (path, from) = ("", 0.0);
        foreach (var limit in limits)
        {
            path += $"{(path.Length == 0 ? "M" : "L")}{Svg.N(X(from))} {Svg.N(Y(side * limit.LimitKg))}H{Svg.N(X(limit.UpToKg))}";
            from = limit.UpToKg;
        }
        return path;
    }

    /// <summary>The band of the uncertainty, straight between the loads that it is stated for.</summary>
    public string Band(IReadOnlyList<LoadBudget> budgets) => budgets.Count < 2
        ? ""
        : $"M{string.Join('L', budgets.Select(b => $"{Svg.N(X(b.LoadKg))} {Svg.N(Y(b.ExpandedKg))}").Concat(budgets.Reverse().Select(b => $"{Svg.N(X(b.LoadKg))} {Svg.N(Y(-b.ExpandedKg))}")))}Z";

    /// <summary>Marks up and down from none.</summary>
    public IEnumerable<double> Marks
    {
        get
        {
            var step = Steps.FirstOrDefault(s => Reach / s <= 2.5, Steps[^1]);
            for (var mark = -Math.Floor(Reach / step) * step; mark <= Reach; mark += step)
                yield return mark;
        }
    }

    /// <summary>Four places along the loads.</summary>
    public IEnumerable<double> LoadMarks => Enumerable.Range(0, 5).Select(k => k * HighestLoad / 4);
}
