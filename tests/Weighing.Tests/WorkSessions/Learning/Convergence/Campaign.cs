using System.Text;

namespace Weighing.Tests.WorkSessions.Learning.Convergence;

/// <summary>Many cars, three crews, one report.</summary>
sealed class Campaign
{
    readonly List<(bool Shared, Outcome Planned, Outcome Rival, Outcome AllFour)> outcomes = [];

    public Campaign(int trials, int seed, double smallestTurn)
    {
        for (var i = 0; i < trials; i++)
        {
            // All crews get the same car and the same luck.
            var carSeed = seed * 100_000 + i;
            var planned = WorkshopCar.Draw(new Random(carSeed), smallestTurn);
            outcomes.Add((planned.SharedError, Trial.Planned(planned), Trial.OneDiagonal(WorkshopCar.Draw(new Random(carSeed), smallestTurn)),
                Trial.AllFour(WorkshopCar.Draw(new Random(carSeed), smallestTurn))));
        }
    }

    public IReadOnlyList<Outcome> Planned => [.. outcomes.Select(o => o.Planned)];

    public IReadOnlyList<Outcome> Rival => [.. outcomes.Select(o => o.Rival)];

    public IReadOnlyList<Outcome> AllFour => [.. outcomes.Select(o => o.AllFour)];

    /// <summary>Share of readings within the interval stated before, percent.</summary>
    public double CoveragePercent => Percent(Planned.SelectMany(o => o.Inside));

    /// <summary>The same over the crews whose rates are all wrong alike, or each by itself.</summary>
    public double CoverageOf(bool sharedErrors) => Percent(outcomes.Where(o => o.Shared == sharedErrors).SelectMany(o => o.Planned.Inside));

    public static double Quantile(IEnumerable<double> values, double share)
    {
        var sorted = values.Order().ToList();
        return sorted[(int)Math.Ceiling(share * sorted.Count) - 1];
    }

    public string Report()
    {
        var text = new StringBuilder();
        foreach (var (name, list) in new[] { ("planned", Planned), ("one diagonal", Rival), ("all four alike", AllFour) })
        {
            text.AppendLine($"{name}, {list.Count} cars");
            text.AppendLine($"  steps to ±{Trial.Band} %     {Spread(list, o => o.Steps, "F0")}   mean {list.Average(o => o.Steps):F2}   " +
                string.Join(" ", list.GroupBy(o => o.Steps).OrderBy(g => g.Key).Select(g => $"{g.Key}:{g.Count()}")));
            text.AppendLine($"  true miss, %         {Spread(list, o => Math.Abs(o.TrueMiss))}");
            text.AppendLine($"  worst corner, mm     {Spread(list, o => o.WorstRise)}");
            text.AppendLine($"  mean height, mm      {Spread(list, o => Math.Abs(o.Rise.Sum / 4))}");
            text.AppendLine($"  rake, mm             {Spread(list, o => Math.Abs(o.Rake))}");
            text.AppendLine($"  left-right load difference, mm  {Spread(list, o => Math.Abs(o.LeftRightDifference))}");
            text.AppendLine($"  steps beyond limits  {list.Sum(o => o.Violations)}");
        }
        text.AppendLine($"stated 95 % intervals cover {CoveragePercent:F1} % of {Planned.Sum(o => o.Inside.Count)} readings; " +
            string.Join(", ", Enumerable.Range(0, 4).Select(k => Planned.Where(o => o.Inside.Count > k).Select(o => o.Inside[k]).ToList())
                .TakeWhile(s => s.Count > 0).Select((s, k) => $"step {k + 1}: {Percent(s):F1} % of {s.Count}")));
        foreach (var shared in (bool[])[true, false])
            text.AppendLine($"  errors {(shared ? "shared by all corners" : "of each corner alone")}: {CoverageOf(shared):F1} %, " +
                $"steps {Spread([.. outcomes.Where(o => o.Shared == shared).Select(o => o.Planned)], o => o.Steps, "F0")}; " +
                $"rival {Spread([.. outcomes.Where(o => o.Shared == shared).Select(o => o.Rival)], o => o.Steps, "F0")}");
        text.AppendLine($"  steps called wrong without cause: {Planned.Sum(o => o.FalseAlarms)}");
        return text.ToString();
    }

    static string Spread(IReadOnlyList<Outcome> list, Func<Outcome, double> value, string format = "F2") =>
        $"median {Quantile(list.Select(value), 0.5).ToString(format)}  p95 {Quantile(list.Select(value), 0.95).ToString(format)}";

    static double Percent(IEnumerable<bool> inside) => inside.ToList() is { Count: > 0 } all ? 100.0 * all.Count(i => i) / all.Count : double.NaN;
}
