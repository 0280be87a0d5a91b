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
    public void Of_as_many_pieces_those_are_taken_that_leave_cross_weight_alone()
    {
        // One shim brings the pads within 1 mm by itself, thinner or thicker; only 0.6 under RR leaves LF + RR as high as RF + LR.
        // n of a rectangle, design section 4: by hand 0 - 0 - 0 + (-1.2 + shim).
        var plan = ShimSearch.Find(new(0, -0.6, 0, -1.2), [new(0.3, 2), new(0.6, 2)], 1);

        Assert.Equal([0.6], plan.Stacks.RR);
        Assert.Equal(1, plan.Pieces);
    }

    [Fact]
    public void A_box_of_six_thicknesses_is_searched_in_no_time()
    {
        var plan = ShimSearch.Find(new(0, -7.3, -3.1, -9.7), [new(3, 20), new(2, 20), new(1, 20), new(0.5, 20), new(0.25, 20), new(0.1, 20)], 0.3);

        Assert.True(plan.Levels);
    }

    [Fact]
    public void Nothing_from_the_box_does_it_with_fewer_pieces_less_warp_or_thinner_ones()
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
            Assert.Equal(b.Warp, Warp(plan.HeightsAfterMm.LF, plan.HeightsAfterMm.RF, plan.HeightsAfterMm.LR, plan.HeightsAfterMm.RR), 1e-6);
            Assert.Equal(b.Thickness, plan.ThicknessMm, 1e-9);
            Assert.True(plan.SpreadMm <= spread + 1e-6);
        }
        Assert.InRange(levelled, 20, 140);
    }

    // n of a rectangle: +, -, -, +.
    static double Warp(double lf, double rf, double lr, double rr) => Math.Abs(lf - rf - lr + rr) / 4;

    // Every piece of the box under no pad or one of four.
    static (int Pieces, double Warp, double Thickness)? Everything(Corners heights, ShimSet[] box, double spread)
    {
        double[] pieces = [.. box.SelectMany(s => Enumerable.Repeat(s.ThicknessMm, s.Pieces))];
        (int, double, double)? best = null;
        var tops = new[] { heights.LF, heights.RF, heights.LR, heights.RR };
        var ceiling = tops.Max() + 3;
        Place(0, 0, 0);
        return best;

        // To the nanometre, so that rounding decides nothing.
        (int, double, double) Score(int used, double thickness) => (used, Math.Round(Warp(tops[0], tops[1], tops[2], tops[3]), 6), Math.Round(thickness, 6));

        void Place(int index, int used, double thickness)
        {
            if (index == pieces.Length)
            {
                if (tops.Max() - tops.Min() <= spread + 1e-6 && tops.Max() <= ceiling + 1e-6 && (best is null || Score(used, thickness).CompareTo(best.Value) < 0))
                    best = Score(used, thickness);
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
