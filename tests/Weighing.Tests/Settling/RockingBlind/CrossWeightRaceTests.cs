using ScaleLink.Weighing.Settling;
using Weighing.Tests.Settling.Scenarios;

namespace Weighing.Tests.Settling.RockingBlind;

/// <summary>
/// Short forms of the long runs in the bench, on fixed seeds, against a one-second average of the ratio on the same records. The
/// cars are made up and the limits are this project's own targets; no published source.
/// </summary>
public class CrossWeightRaceTests
{
    static readonly (double From, double To)[] Ages = [(0, .5), (.5, 1), (1, 2), (2, 5), (5, 20)];

    [Fact]
    public void Hard_rocking_takes_a_quarter_of_the_time_to_a_twentieth_of_a_percent()
    {
        var runs = Runs(Scenario.HardRocking, 9003, 60);
        Faster(runs, .05, .5, .25);
        Faster(runs, .05, .95, .25);
    }

    [Fact]
    public void With_friction_it_is_nowhere_slower_and_halves_the_error_while_somebody_works_on_the_car()
    {
        var runs = Runs(Scenario.Friction, 9003, 50);
        Faster(runs, .20, .95, .6);
        foreach (var band in new[] { .05, .10, .20 })
        {
            Faster(runs, band, .5, 1);
            Faster(runs, band, .95, 1);
        }
        var before = (int)((-.2 - Motion.Start) / .05);
        var own = HoldTime.Percentile(runs.Select(run => run.Error(run.Joined, before)), .95);
        var rival = HoldTime.Percentile(runs.Select(run => run.AverageError(before)), .95);
        Assert.True(own <= .5 * rival, $"{own} against {rival} %");
    }

    [Fact]
    public void Intervals_hold_under_friction_at_every_age()
    {
        var runs = Runs(Scenario.Friction, 9003, 50);
        foreach (var (from, to) in Ages)
        {
            var covers = runs.SelectMany(run => Enumerable.Range(0, run.Joined.Length)
                .Where(k => RockingRecord.Time(k) >= from && RockingRecord.Time(k) < to)
                .Select(k => run.Covers(run.Joined, k)).OfType<bool>()).ToArray();
            Assert.True(covers.Length > 0 && covers.Count(c => c) >= .93 * covers.Length, $"{from} to {to} s: {covers.Count(c => c)} of {covers.Length}");
        }
    }

    [Fact]
    public void Three_bounces_teach_it_almost_as_well_as_the_model()
    {
        var runs = Enumerable.Range(0, 16).AsParallel().AsOrdered().Select(i =>
        {
            var (next, learner) = Bounces.Of(SpringCarKind.HardRocking, 9001, i, 3);
            var known = CrossWeightTrial.TrueModel(next.Motion);
            var learned = learner.Join(ScaleLink.Weighing.Settling.RockingBlind.BlindDirection.Unknown(known.Warp));
            return (Known: new CrossWeightTrial(next, known), Learned: new CrossWeightTrial(next, learned));
        }).ToArray();
        foreach (var p in new[] { .5, .95 })
        {
            var known = Time([.. runs.Select(r => r.Known)], r => k => r.Error(r.Joined, k), .05, p);
            var learned = Time([.. runs.Select(r => r.Learned)], r => k => r.Error(r.Joined, k), .05, p);
            Assert.True(learned <= 2 * known, $"{learned} against {known} s");
        }
    }

    static readonly Dictionary<string, CrossWeightTrial[]> Done = [];

    static CrossWeightTrial[] Runs(Scenario scenario, int seed, int trials)
    {
        lock (Done)
        {
            if (!Done.TryGetValue(scenario.Name, out var runs))
                Done[scenario.Name] = runs = scenario.Each(seed, trials,
                    record => new CrossWeightTrial(record, CrossWeightTrial.TrueModel(record.Motion)));
            Assert.All(runs, run => Assert.True(run.Referred));
            return runs;
        }
    }

    /// <summary>"Not slower" is judged to one block: so few records tell no finer.</summary>
    static void Faster(CrossWeightTrial[] runs, double band, double share, double limit)
    {
        var own = Time(runs, run => k => run.Error(run.Joined, k), band, share);
        var rival = Time(runs, run => run.AverageError, band, share);
        Assert.True(own <= limit * rival + (limit == 1 ? SettlingEstimator.BlockSeconds : 0), $"{band} %, {share}: {own} against {rival} s");
    }

    static double Time(CrossWeightTrial[] runs, Func<CrossWeightTrial, Func<int, double>> error, double band, double share) =>
        HoldTime.Percentile(runs.Select(run => HoldTime.Of(error(run), band)), share);
}
