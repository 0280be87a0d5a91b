using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Weighing.Calibration.Trim;

/// <summary>One place of a corner-load test: the same mass, put down there.</summary>
/// <param name="Place">For example "over cell 1" or "centre".</param>
/// <param name="CellCounts">Counts of each cell above the empty pad.</param>
sealed record PlacedLoad(string Place, IReadOnlyList<double> CellCounts);

/// <summary>What trimming the cells does.</summary>
/// <param name="Trim">Factor of each cell. On average over the places the sum of the cells stays what it was.</param>
/// <param name="BeforeKg">Largest difference between two places without trims, kg.</param>
/// <param name="AfterKg">The same with the trims, kg.</param>
/// <param name="SparePlaces">
/// Places beyond the number of cells. With none the trims fit exactly, and <paramref name="AfterKg"/> shows nothing.
/// </param>
sealed record CellTrims(IReadOnlyList<double> Trim, double BeforeKg, double AfterKg, int SparePlaces);

/// <summary>
/// Trims the cells of a pad so that a load reads the same wherever it stands: least squares on one equation a place,
/// sum of trim times counts = the mean of the sums.
/// </summary>
static class CornerLoadTest
{
    /// <summary>A trim further than this from one speaks of a fault (common practice, no published source).</summary>
    public const double TrimLimit = 0.15;

    // Above this the places share the load among the cells too much alike, and noise is blown up as much.
    const double WorstCondition = 30;

    // A place has to change the shares of the cells by this much of the load to count as another one.
    const double LeastMove = 0.1;

    // Against what the places show, the pull of the trims towards one counts by its square: about a thousandth.
    const double Pull = 0.03;

    /// <summary>
    /// Largest mass of the test for up to four supports is a third of the capacity, above that capacity / (supports - 1).
    /// Source: OIML R 76-1:2006, 3.6.2.
    /// </summary>
    public static double TestLoadKg(double capacityKg, int supports) => capacityKg / (supports <= 4 ? 3 : supports - 1);

    /// <summary>Works the test out.</summary>
    /// <param name="places">At least as many places as cells.</param>
    /// <param name="loadKg">The mass, kg.</param>
    /// <exception cref="RefusedException">SL-321 places too few or alike; SL-320 a cell that differs too much.</exception>
    public static CellTrims Evaluate(IReadOnlyList<PlacedLoad> places, double loadKg)
    {
        ArgumentNullException.ThrowIfNull(places);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(loadKg);
        var cells = places.Count == 0 ? 0 : places[0].CellCounts.Count;
        if (cells == 0 || places.Count < cells || places.Any(p => p.CellCounts.Count != cells))
            throw new RefusedException(CalibrationCodes.PlacesAlike.Because($"{places.Count} places for {cells} cells"));

        double[] sums = [.. places.Select(p => p.CellCounts.Sum())];
        var mean = sums.Average();
        var design = new double[places.Count, cells];
        for (var i = 0; i < places.Count; i++)
            for (var j = 0; j < cells; j++)
                design[i, j] = places[i].CellCounts[j] / mean;
        // Solving for the departure from one, not for the trim, keeps all digits for what is small.
        double[] trim = [.. Departures(design, [.. sums.Select(s => 1 - s / mean)]).Select(departure => 1 + departure)];
        RequireModest(trim);
        double[] trimmed = [.. places.Select(p => p.CellCounts.Zip(trim, (c, t) => c * t).Sum())];
        return new CellTrims(trim, Difference(sums, mean, loadKg), Difference(trimmed, mean, loadKg), places.Count - cells);
    }

    static double[] Departures(double[,] design, double[] wanted)
    {
        var factor = HouseholderQr.Of(design);
        // Rows of the pseudo-inverse say how much of the readings' noise a trim takes up.
        if (factor.FullRank && Enumerable.Range(0, factor.Columns).Max(j => Norm(factor.PseudoInverse(), j)) <= WorstCondition)
            return factor.Solve(wanted);
        // A stiff plate on stiff cells shares any load by levers alone: with four cells one pattern of trims changes nothing
        // that a load can do. Of all trims that serve, those nearest to one are taken.
        if (!ShowsThePlate(design))
            throw new RefusedException(CalibrationCodes.PlacesAlike.Because("every place loads the cells in nearly the same shares"));
        return HouseholderQr.Of(WithPull(design)).Solve([.. wanted, .. new double[factor.Columns]]);
    }

    // Whether the load was moved along and across: what the cells' shares do beyond their mean has two directions, one with two cells.
    static bool ShowsThePlate(double[,] design)
    {
        var (places, cells) = (design.GetLength(0), design.GetLength(1));
        double Mean(int j) => Enumerable.Range(0, places).Average(i => design[i, j]);
        List<double[]> moves = [.. Enumerable.Range(0, places).Select(i => Enumerable.Range(0, cells).Select(j => design[i, j] - Mean(j)).ToArray())];
        for (var direction = 0; direction < Math.Min(cells - 1, 2); direction++)
        {
            var widest = moves.MaxBy(m => m.Sum(x => x * x))!;
            var square = widest.Sum(x => x * x);
            if (square < LeastMove * LeastMove)
                return false;
            moves = [.. moves.Select(m => m.Zip(widest, (x, w) => x - w * m.Zip(widest, (y, v) => y * v).Sum() / square).ToArray())];
        }
        return true;
    }

    static double[,] WithPull(double[,] design)
    {
        var (places, cells) = (design.GetLength(0), design.GetLength(1));
        var pulled = new double[places + cells, cells];
        for (var j = 0; j < cells; j++)
        {
            for (var i = 0; i < places; i++)
                pulled[i, j] = design[i, j];
            pulled[places + j, j] = Pull;
        }
        return pulled;
    }

    static double Norm(double[,] matrix, int row) =>
        Math.Sqrt(Enumerable.Range(0, matrix.GetLength(1)).Sum(i => matrix[row, i] * matrix[row, i]));

    static void RequireModest(double[] trim)
    {
        var worst = Enumerable.Range(0, trim.Length).MaxBy(i => Math.Abs(trim[i] - 1));
        if (Math.Abs(trim[worst] - 1) > TrimLimit)
            throw new RefusedException(CalibrationCodes.CellTrimTooLarge.Because($"cell {worst + 1} would need a factor of {trim[worst]:0.000}"));
    }

    static double Difference(double[] sums, double mean, double loadKg) => (sums.Max() - sums.Min()) / mean * loadKg;
}
