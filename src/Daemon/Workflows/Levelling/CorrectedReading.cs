using ScaleLink.Daemon.Bay;
using ScaleLink.Measure;
using ScaleLink.Weighing.Levelling;

namespace ScaleLink.Daemon.Workflows.Levelling;

/// <summary>A reading with corrections of the patch in it: each with its size, its uncertainty joined to the others, refusals marked.</summary>
internal static class CorrectedReading
{
    private const string BudgetName = "patch";

    /// <summary>Joins corrections to a reading whose loads are all known.</summary>
    public static BayReading Of(BayReading reading, CorrectedLoads corrected, IReadOnlyList<CorrectionKind> wanted, long refusedSinceNs)
    {
        var spread = corrected.CorrectionCovariance;
        var before = Corners.From(c => reading.Corners[(int)c].LoadKg!.Value.Estimate);
        var change = corrected.LoadsKg - before;
        var shares = LoadShares.Of(corrected.LoadsKg);
        var own = spread.DiagonalPart.Map(v => Math.Sqrt(Math.Max(0, v)));
        return reading with
        {
            Corners = [.. reading.Corners.Select(c => Corner(c, corrected, wanted, own[c.Corner], refusedSinceNs))],
            TotalKg = Shift(reading.TotalKg, change.Sum, Corners.Same(1)),
            CrossWeightPercent = Share(reading.CrossWeightPercent, shares?.CrossWeightSlope),
            FrontWeightPercent = Share(reading.FrontWeightPercent, shares?.FrontSlope),
            LeftSideWeightPercent = Share(reading.LeftSideWeightPercent, shares?.LeftSlope),
            FrontLeftRightDifferenceKg = Shift(reading.FrontLeftRightDifferenceKg, change.LF - change.RF, new(1, -1, 0, 0)),
            RearLeftRightDifferenceKg = Shift(reading.RearLeftRightDifferenceKg, change.LR - change.RR, new(0, 0, 1, -1)),
        };

        Value? Shift(Value? quantity, double by, Corners weights) => quantity is { } q
            ? q with { Estimate = q.Estimate + by, StandardUncertainty = q.StandardUncertainty is { } u ? Math.Sqrt(u * u + spread.VarianceOf(weights)) : null }
            : null;

        // Small against the total, so a share moves along its slope.
        Value? Share(Value? quantity, Corners? slope) => slope is { } s ? Shift(quantity, s.Dot(change), s) : quantity;
    }

    /// <summary>Nothing to correct by: the reading stays and says so.</summary>
    public static BayReading Mark(BayReading reading, IReadOnlyList<CorrectionKind> wanted, string reason) => reading with
    {
        Corners = [.. reading.Corners.Select(c => c with { Corrections = [.. c.Corrections, .. wanted.Select(k => new Correction(NameOf(k), null, $"refused: {reason}"))] })],
    };

    /// <summary>Name on every face.</summary>
    public static string NameOf(CorrectionKind kind) => kind.ToString().ToLowerInvariant();

    private static CornerReading Corner(CornerReading corner, CorrectedLoads corrected, IReadOnlyList<CorrectionKind> wanted, double own, long refusedSinceNs)
    {
        var load = corner.LoadKg!.Value;
        var mine = corrected.Corrections.Where(c => wanted.Contains(c.Kind)).ToList();
        return corner with
        {
            LoadKg = load with { Estimate = corrected.LoadsKg[corner.Corner], StandardUncertainty = load.StandardUncertainty is { } u ? Math.Sqrt(u * u + own * own) : null },
            Corrections = [.. corner.Corrections, .. mine.Select(c => new Correction(NameOf(c.Kind), c.Applied ? c.SizeKg!.Value[corner.Corner] : null, c.Refusal?.Message ?? default))],
            Budget = corner.Budget.Count > 0 && own > 0 ? [.. corner.Budget, new UncertaintyPart(BudgetName, own)] : corner.Budget,
            Faults = [.. corner.Faults, .. mine.Where(c => c.Refusal is not null).Select(c => c.Refusal! with { SinceNs = refusedSinceNs })],
        };
    }
}
