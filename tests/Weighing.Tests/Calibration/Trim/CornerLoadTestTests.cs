using CsCheck;
using ScaleLink.Weighing.Calibration.Trim;

namespace Weighing.Tests.Calibration.Trim;

/// <summary>A plate on cells: a load at (x, y) shares itself by levers, and each cell has a gain of its own.</summary>
public class CornerLoadTestTests
{
    static readonly (double X, double Y)[] OverCells = [(0.9, 0.9), (0.9, -0.9), (-0.9, 0.9), (-0.9, -0.9), (0, 0)];

    [Fact]
    public void After_trimming_the_place_no_longer_matters() => Gen.Select(Gen.Double[0.97, 1.03].Array[4], Gen.Double[-1, 1], Gen.Double[-1, 1])
        .Sample((gains, x, y) =>
        {
            var trims = CornerLoadTest.Evaluate([.. OverCells.Select((at, i) => new PlacedLoad($"place {i}", Cells(gains, at.X, at.Y)))], 100);
            Assert.Equal(0, trims.AfterKg, 1e-6);
            Assert.Equal(1, trims.SparePlaces);
            // Anywhere else on the plate the trimmed sum is that of the middle.
            double Sum(double px, double py) => Cells(gains, px, py).Zip(trims.Trim, (c, t) => c * t).Sum();
            Assert.Equal(Sum(0, 0), Sum(x, y), 1e-5 * Sum(0, 0));
        });

    [Fact]
    public void The_position_error_before_is_that_of_the_places_read()
    {
        // One cell 2 % high: over it the load reads by 0.02 x share more. Shares at 0.9: 0.9025 over, 0.0025 across.
        var trims = CornerLoadTest.Evaluate([.. OverCells.Select((at, i) => new PlacedLoad($"place {i}", Cells([1.02, 1, 1, 1], at.X, at.Y)))], 100);
        Assert.Equal(100 * 0.02 * (0.9025 - 0.0025), trims.BeforeKg, 0.02);
        Assert.True(trims.Trim[0] < trims.Trim[1]);
        Assert.Equal(0.98, trims.Trim[0] / trims.Trim[1], 0.001);
    }

    [Fact]
    public void A_stiff_plate_that_shares_by_levers_alone_is_trimmed_too() => Gen.Select(Gen.Double[0.97, 1.03].Array[4], Gen.Double[-1, 1], Gen.Double[-1, 1])
        .Sample((gains, x, y) =>
        {
            double[] Stiff(double px, double py) => [.. new[] { (1, 1), (1, -1), (-1, 1), (-1, -1) }.Select((at, i) => gains[i] * 100_000 * 0.25 * (1 + at.Item1 * px + at.Item2 * py))];
            var trims = CornerLoadTest.Evaluate([.. OverCells.Select((at, i) => new PlacedLoad($"place {i}", Stiff(at.X, at.Y)))], 100);
            double Sum(double px, double py) => Stiff(px, py).Zip(trims.Trim, (c, t) => c * t).Sum();
            // 3 % apart before; the pull towards one leaves a thousandth of that.
            Assert.Equal(Sum(0, 0), Sum(x, y), 1e-4 * Sum(0, 0));
        });

    [Fact]
    public void Noise_is_left_as_noise()
    {
        var random = new Random(4);
        var places = OverCells.Select((at, i) => new PlacedLoad($"place {i}", [.. Cells([1.01, 0.99, 1, 1], at.X, at.Y).Select(c => c + 4 * (random.NextDouble() - 0.5))]));
        Assert.InRange(CornerLoadTest.Evaluate([.. places], 100).AfterKg, 0.0001, 0.03);
    }

    [Fact]
    public void Places_that_load_the_cells_alike_are_refused() => Assert.Equal("SL-321", Refused(
        [.. Enumerable.Range(0, 5).Select(i => new PlacedLoad("middle", Cells([1, 1, 1, 1], 0.01 * i, 0.01 * i * i)))]));

    [Fact]
    public void Fewer_places_than_cells_are_refused() =>
        Assert.Equal("SL-321", Refused([new("over cell 1", Cells([1, 1, 1, 1], 1, 1))]));

    [Fact]
    public void A_cell_that_differs_by_a_fifth_is_refused_and_named() => Assert.Equal("SL-320", Refused(
        [.. OverCells.Select((at, i) => new PlacedLoad($"place {i}", Cells([0.8, 1, 1, 1], at.X, at.Y)))]));

    [Theory]
    // OIML R 76-1:2006, 3.6.2: a third of Max on up to four supports, Max / (n - 1) on more.
    [InlineData(4, 150)]
    [InlineData(1, 150)]
    [InlineData(6, 90)]
    public void The_test_load_follows_OIML_R_76(int supports, double expected) =>
        Assert.Equal(expected, CornerLoadTest.TestLoadKg(450, supports), 1e-9);

    static string Refused(List<PlacedLoad> places) => Assert.Throws<RefusedException>(() => CornerLoadTest.Evaluate(places, 100)).Diagnostic.Code;

    static double[] Cells(double[] gains, double x, double y) =>
    [
        .. new[] { (1 + x) * (1 + y), (1 + x) * (1 - y), (1 - x) * (1 + y), (1 - x) * (1 - y) }.Select((share, i) => 40_000 * gains[i] * share / 4),
    ];
}
