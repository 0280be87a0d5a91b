using ScaleLink.Measure;
using ScaleLink.Weighing.Levelling;

namespace Weighing.Tests.Levelling;

public class ShimSearchTests
{
    [Fact]
    public void Each_low_pad_gets_the_one_shim_that_fits()
    {
        var plan = ShimSearch.Find(new(0, -2, -1, -3), [new(1, 4), new(2, 4), new(3, 4)], 0.2);

        Assert.True(plan is { Levels: true, Pieces: 3, Finding: null });
        Assert.Equal([2.0], plan.Stacks.RF);
        Assert.Equal([3.0], plan.Stacks.RR);
        Assert.Equal(0, plan.SpreadMm, 1e-9);
        Assert.Equal(0, plan.HeightsAfterMm.Sum, 1e-9);
    }

    [Fact]
    public void Level_pads_get_none() => Assert.True(ShimSearch.Find(new(0, 0.1, 0.2, 0.3), [new(1, 9)]) is { Levels: true, Pieces: 0 });

    [Fact]
    public void The_box_is_shared()
    {
        var plan = ShimSearch.Find(new(0, -2, -2, 0), [new(2, 1), new(1, 2)], 0.1);

        Assert.True(plan is { Levels: true, Pieces: 3 });
    }

    [Fact]
    public void What_cannot_be_levelled_is_made_as_flat_as_it_goes_and_said()
    {
        var plan = ShimSearch.Find(new(0, 0, 0, -5), [new(2, 2)], 0.5);

        Assert.Equal(PatchCodes.ShimsDoNotReach, plan.Finding?.Code);
        Assert.Equal(1, plan.SpreadMm, 0.011);
        Assert.False(ShimSearch.Find(new(0, 0, 0, -5), [], 0.5).Levels);
    }

    [Fact]
    public void Nothing_from_the_box_does_it_with_fewer_or_thinner_pieces()
    {
        var random = new Random(7601);
        var levelled = 0;
        for (var i = 0; i < 150; i++)
        {
            var heights = Corners.From(_ => Math.Round(8 * random.NextDouble(), 1));
            ShimSet[] box = [new(0.5, random.Next(3)), new(1, random.Next(4)), new(3, random.Next(3))];
            var spread = 0.2 + random.NextDouble();

            var plan = ShimSearch.Find(heights, box, spread);
            var best = Everything(heights, box, spread);

            Assert.Equal(best is not null, plan.Levels);
            if (best is not { } b)
                continue;
            levelled++;
            Assert.Equal(b.Pieces, plan.Pieces);
            Assert.Equal(b.Thickness, plan.ThicknessMm, 1e-9);
            Assert.True(plan.SpreadMm <= spread + 1e-6);
        }
        Assert.InRange(levelled, 20, 140);
    }

    // Every piece of the box under no pad or one of four.
    static (int Pieces, double Thickness)? Everything(Corners heights, ShimSet[] box, double spread)
    {
        double[] pieces = [.. box.SelectMany(s => Enumerable.Repeat(s.ThicknessMm, s.Pieces))];
        (int, double)? best = null;
        var tops = new[] { heights.LF, heights.RF, heights.LR, heights.RR };
        var ceiling = tops.Max() + 3;
        Place(0, 0, 0);
        return best;

        void Place(int index, int used, double thickness)
        {
            if (index == pieces.Length)
            {
                if (tops.Max() - tops.Min() <= spread + 1e-6 && tops.Max() <= ceiling + 1e-6 && (best is null || (used, thickness).CompareTo(best.Value) < 0))
                    best = (used, thickness);
                return;
            }
            Place(index + 1, used, thickness);
            for (var pad = 0; pad < 4; pad++)
            {
                tops[pad] += pieces[index];
                Place(index + 1, used + 1, thickness + pieces[index]);
                tops[pad] -= pieces[index];
            }
        }
    }

    [Fact]
    public void Shims_that_cannot_be_are_refused() =>
        Assert.Equal(PatchCodes.InputUnusable, Assert.Throws<DiagnosticException>(() => ShimSearch.Find(default, [new(0, 1)])).Diagnostics[0].Code);
}
