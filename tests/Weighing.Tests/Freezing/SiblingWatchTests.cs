using ScaleLink.Weighing.Freezing;

namespace Weighing.Tests.Freezing;

/// <summary>One of several stands still while all others move. Common practice, no published source.</summary>
public class SiblingWatchTests
{
    [Fact]
    public void The_one_that_stays_is_named_and_stays_so_until_it_moves()
    {
        var bench = new Bench(4);
        bench.Read(100, 100, 100, 100);
        bench.Read(119, 81, 119, 100);
        Assert.Null(bench.Found);
        bench.Read(120, 80, 120, 100);
        Assert.Equal(3, bench.Found);
        bench.Read(100, 100, 100, 100);
        Assert.Equal(3, bench.Found);
        bench.Read(100, 100, 100, 101);
        Assert.Null(bench.Found);
    }

    [Fact]
    public void Whoever_turns_back_or_follows_late_is_not_still()
    {
        var watch = new SiblingWatch(4);
        var late = new SeenValue(100, 1, 0);
        for (var k = 0; k < 2000; k++)
        {
            // A car that rocks, one corner in quadrature to the others and three seconds behind them at most.
            var (one, other) = (new SeenValue((long)(1e5 * Math.Sin(0.02 * k)), 1, k), new SeenValue((long)(1e5 * Math.Cos(0.02 * k)), 1, k / 2));
            if (k % 290 == 289)
                late = late with { Value = late.Value + 50, Changes = late.Changes + 1 };
            Assert.Null(watch.Look(0.01 * k, [one, other, one, late]));
        }
    }

    [Fact]
    public void A_load_on_some_of_them_says_nothing_of_the_others()
    {
        var bench = new Bench(4);
        bench.Read(100, 100, 100, 100);
        bench.Read(5000, 100, 100, 100);
        bench.Read(5000, 5000, 100, 100);
        Assert.Null(bench.Found);
    }

    [Fact]
    public void Movement_counts_in_each_ones_own_division()
    {
        var bench = new Bench(4, divisions: [1, 1, 50, 1]);
        bench.Read(100, 100, 100, 100);
        bench.Read(200, 200, 1050, 100);
        Assert.Null(bench.Found);
        bench.Read(200, 200, 1100, 100);
        Assert.Equal(3, bench.Found);
    }

    [Fact]
    public void Two_beside_each_other_say_nothing_and_what_was_before_a_gap_does_not_count()
    {
        var pair = new Bench(2);
        pair.Read(100, 100);
        pair.Read(9000, 100);
        Assert.Null(pair.Found);
        var bench = new Bench(3);
        bench.Read(100, 100, 100);
        bench.Interrupt();
        bench.Read(9000, 9000, 100);
        Assert.Null(bench.Found);
    }

    private sealed class Bench
    {
        private readonly SiblingWatch _watch;
        private readonly SeenValue[] _seen;
        private double _seconds;

        public Bench(int count, long[]? divisions = null) =>
            (_watch, _seen) = (new SiblingWatch(count), [.. Enumerable.Range(0, count).Select(k => new SeenValue(0, divisions?[k] ?? 1, 0))]);

        public int? Found { get; private set; }

        public void Interrupt() => _watch.Interrupt();

        public void Read(params long[] values)
        {
            for (var k = 0; k < values.Length; k++)
                if (values[k] != _seen[k].Value)
                    _seen[k] = _seen[k] with { Value = values[k], Changes = _seen[k].Changes + 1 };
            _watch.Look(_seconds += 0.1, _seen);
            Found = _watch.Look(_seconds += 3.1, _seen);
        }
    }
}
