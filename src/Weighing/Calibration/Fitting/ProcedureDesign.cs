using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Calibration.Fitting;

/// <summary>
/// The points of a calibration procedure as linear equations: known mass = zero of the repetition + a x + b x² - ballast. Each repetition has its own
/// zero, for zeros wander and service subtracts them; each piece of ballast is an unknown that the same points determine.
/// x is counts above the repetition's first empty reading, as service counts from its zero, over the whole range, so that it
/// repetitions from 0 to about 1.
/// </summary>
sealed class ProcedureDesign
{
    readonly IReadOnlyList<ProcedurePoint> _points;
    readonly MassSet _masses;

    public ProcedureDesign(MassSet masses, IReadOnlyList<ProcedurePoint> points)
    {
        (_masses, _points) = (masses, points);
        Repetitions = [.. points.Select(p => p.Repetition).Distinct().Order()];
        Ballast = [.. points.SelectMany(p => p.Load.Ballast).Distinct().Order(StringComparer.Ordinal)];
        var origins = Repetitions.ToDictionary(repetition => repetition,
            repetition => (points.FirstOrDefault(p => p.Repetition == repetition && p.Load.IsEmpty) ?? points.First(p => p.Repetition == repetition)).Counts);
        Origin = origins[Repetitions[^1]];
        double[] above = [.. points.Select(p => p.Counts - origins[p.Repetition])];
        // Signed, so that a pad with reversed cells still climbs.
        Scale = above.MaxBy(Math.Abs) is var widest and not 0 ? widest : 1;
        X = [.. above.Select(counts => counts / Scale)];
        Y = [.. points.Select(p => masses.Kg(p.Load))];
        Line = Of(Curve(1));
        Quadratic = Of(Curve(2));
        Repeats = EveryPoint();
    }

    public IReadOnlyList<int> Repetitions { get; }

    public IReadOnlyList<string> Ballast { get; }

    /// <summary>Counts at x = 0 of the last repetition.</summary>
    public double Origin { get; }

    /// <summary>Counts for one unit of x.</summary>
    public double Scale { get; }

    public IReadOnlyList<double> X { get; }

    public IReadOnlyList<double> Y { get; }

    public double[,] Line { get; }

    public double[,] Quadratic { get; }

    /// <summary>
    /// One coefficient for each load and way in place of a curve: leaves the repeatability of the repeats alone. Null without
    /// repeats.
    /// </summary>
    public double[,]? Repeats { get; }

    /// <summary>How each observation moves when the masses of a lot err together by one standard uncertainty.</summary>
    public IEnumerable<double[]> LotErrors => _masses.Masses.GroupBy(m => m.Lot)
        .Select(lot => lot.Select(m => MassErrors(m)).Aggregate((a, b) => [.. a.Zip(b, (x, y) => x + y)]));

    /// <summary>How each observation moves when one mass errs by one standard uncertainty, mass by mass.</summary>
    public IEnumerable<double[]> SingleErrors => _masses.Masses.Select(MassErrors);

    /// <summary>
    /// The curve of that order with hysteresis as one coefficient more, the last: half of the loop to each way, open half way and closed at
    /// both ends. Null where it cannot be told or leaves too little to judge by.
    /// </summary>
    public double[,]? WithLoop(int order)
    {
        if (_points.All(p => p.Load.IsEmpty || p.Way == LoadingWay.Up))
            return null;
        var design = Of([.. Curve(order), i => (_points[i].Way == LoadingWay.Down ? 2 : -2) * X[i] * (1 - X[i])]);
        return ModelChoice.Carries(design, Repeats) ? design : null;
    }

    double[,]? EveryPoint()
    {
        var level = Levels();
        if (level.Max() + Repetitions.Count >= _points.Count)
            return null;
        // The zeros of the repetitions and the levels share one constant; the first repetition's column would be redundant.
        var design = Of(
        [
            .. Repetitions.Skip(1).Select(repetition => (Func<int, double>)(i => _points[i].Repetition == repetition ? 1 : 0)),
            .. Enumerable.Range(0, level.Max() + 1).Select(own => (Func<int, double>)(i => level[i] == own ? 1 : 0)),
        ]);
        return HouseholderQr.Of(design).FullRank ? design : null;
    }

    double[] MassErrors(KnownMass mass) =>
        [.. _points.Select(p => p.Load.Masses.Count(label => label == mass.Label) * mass.StandardUncertaintyKg)];

    IEnumerable<Func<int, double>> Curve(int order) =>
    [
        .. Repetitions.Select(repetition => (Func<int, double>)(i => _points[i].Repetition == repetition ? 1 : 0)),
        .. Enumerable.Range(1, order).Select(power => (Func<int, double>)(i => Math.Pow(X[i], power))),
        .. Ballast.Select(label => (Func<int, double>)(i => -_points[i].Load.Ballast.Count(b => b == label))),
    ];

    double[,] Of(IEnumerable<Func<int, double>> columns) => Design.Of(_points.Count, [.. columns]);

    // A number for each load and way, point by point.
    int[] Levels()
    {
        var numbers = _points.Select(p => (p.Load, p.Way)).Distinct().Index().ToDictionary(level => level.Item, level => level.Index);
        return [.. _points.Select(p => numbers[(p.Load, p.Way)])];
    }
}
