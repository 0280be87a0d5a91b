using ScaleLink.Weighing.Calibration.Fitting;
using ScaleLink.Weighing.Calibration.Masses;

namespace ScaleLink.Weighing.Calibration.Results;

/// <summary>Reads a pad's characteristics out of the points of its calibration procedure.</summary>
static class Characterisation
{
    /// <summary>From the points and the curve through them, which gives counts their kilograms.</summary>
    public static PadCharacteristics Of(MassSet masses, IReadOnlyList<ProcedurePoint> points, CurveFit curve)
    {
        ArgumentNullException.ThrowIfNull(masses);
        ArgumentNullException.ThrowIfNull(points);
        ArgumentNullException.ThrowIfNull(curve);
        var levels = Levels(masses, points, curve);
        return new PadCharacteristics
        {
            Levels = levels,
            NonLinearity = NonLinearity(points, levels),
            Hysteresis = Furthest(levels.Where(l => !l.Load.IsEmpty && l.HysteresisKg is not null).Select(l => new AtLoad(l.HysteresisKg!.Value, l.Kg))),
            Repeatability = Furthest(levels.Where(l => !l.Load.IsEmpty && l.SpreadKg is not null).Select(l => new AtLoad(l.SpreadKg!.Value, l.Kg))),
            ZeroReturnKg = ZeroReturn(points, curve),
        };
    }

    /// <summary>The mass of a stack, ballast at the value that the curve gave it, kg.</summary>
    public static double Kg(MassSet masses, LoadStack load, CurveFit curve)
    {
        ArgumentNullException.ThrowIfNull(masses);
        ArgumentNullException.ThrowIfNull(load);
        ArgumentNullException.ThrowIfNull(curve);
        return masses.Kg(load) + load.Ballast.Sum(label => curve.Ballast.Single(b => b.Label == label).Kg);
    }

    static List<LevelResult> Levels(MassSet masses, IReadOnlyList<ProcedurePoint> points, CurveFit curve)
    {
        var zeros = Zeros(points);
        double Output(ProcedurePoint p) => Net(curve, p.Counts - zeros[p.Repetition]);
        return [.. points.GroupBy(p => p.Load).Select(group =>
        {
            var kg = Kg(masses, group.Key, curve);
            List<double> up = [.. group.Where(p => p.Way == LoadingWay.Up).Select(Output)];
            List<double> down = [.. group.Where(p => p.Way == LoadingWay.Down).Select(Output)];
            // A load read on the way down only, as when the last masses come off in other steps, has no way up.
            var mean = up.Count > 0 ? up.Average() : down.Average();
            double? spread = up.Count > 1 || down.Count > 1 ? Math.Max(Spread(up), Spread(down)) : null;
            return new LevelResult(group.Key, kg, mean, up.Count > 0 && down.Count > 0 ? down.Average() : null, spread,
                up.Concat(down).Select(output => output - kg).MaxBy(Math.Abs));
        }).OrderBy(level => level.Kg)];
    }

    static AtLoad NonLinearity(IReadOnlyList<ProcedurePoint> points, List<LevelResult> levels)
    {
        var zeros = Zeros(points);
        var signals = points.Where(p => p.Way == LoadingWay.Up).GroupBy(p => p.Load)
            .Select(g => (levels.Single(l => l.Load == g.Key).Kg, Counts: g.Average(p => p.Counts - zeros[p.Repetition]))).OrderBy(s => s.Kg).ToList();
        var highest = signals[^1];
        var kgPerCount = highest.Kg / highest.Counts;
        return Furthest(signals.Select(s => new AtLoad(s.Counts * kgPerCount - s.Kg, s.Kg)))!.Value;
    }

    static double? ZeroReturn(IReadOnlyList<ProcedurePoint> points, CurveFit curve)
    {
        var empty = points.Where(p => p.Load.IsEmpty).GroupBy(p => p.Repetition);
        var returns = empty.Where(repetition => repetition.Any(p => p.Way == LoadingWay.Up) && repetition.Any(p => p.Way == LoadingWay.Down))
            .Select(repetition => curve.SpanKgPerCount * (repetition.Last(p => p.Way == LoadingWay.Down).Counts - repetition.First(p => p.Way == LoadingWay.Up).Counts))
            .ToList();
        return returns.Count == 0 ? null : returns.MaxBy(Math.Abs);
    }

    // The empty pad before the repetition, as service would take it.
    static Dictionary<int, double> Zeros(IReadOnlyList<ProcedurePoint> points) => points.GroupBy(p => p.Repetition).ToDictionary(
        repetition => repetition.Key, repetition => (repetition.FirstOrDefault(p => p.Load.IsEmpty) ?? points.First(p => p.Load.IsEmpty)).Counts);

    static double Net(CurveFit curve, double counts) => counts * (curve.SpanKgPerCount + curve.CurvatureKgPerCount2 * counts);

    static double Spread(List<double> values) => values.Count < 2 ? 0 : values.Max() - values.Min();

    static AtLoad? Furthest(IEnumerable<AtLoad> found)
    {
        var list = found.ToList();
        return list.Count == 0 ? null : list.MaxBy(f => Math.Abs(f.Kg));
    }
}
