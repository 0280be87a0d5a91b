namespace ScaleLink.Probing.Loading;

/// <summary>
/// Which of a device's numbers are its load cells, by how they were at rest and under a load. A cell moves, and is quiet against its move; what
/// is read in the wrong form is not quiet, since the noise of a low half then counts 65536 times, or leaves registers over that moved as well.
/// </summary>
/// <param name="places">All places.</param>
/// <param name="rest">Each place at rest.</param>
/// <param name="loaded">Each place under the load.</param>
internal sealed class LoadedNumbers(IReadOnlyList<NumberPlace> places, IReadOnlyList<NumberSpan> rest, IReadOnlyList<NumberSpan> loaded)
{
    // A person on a pad reaches each of its cells; temperature and tilt hardly.
    private const double LeastPart = 0.02;

    // A move against the noise at rest.
    private const double LeastClear = 20;

    // A float that is none is as unsteady under the load as its last digits are; a person sways less.
    private const double LeastSteadyFloat = 15;

    // Half of what a unit of the high half is worth: more noise than that is a low half in the high one's place.
    private const double MostPairNoise = 32768;

    // A float outside of these is an integer that was read as one.
    private const double LeastFloat = 1e-6, MostFloat = 1e7;

    // The same number twice, as gross and net are, moves alike within its noise; two cells do not.
    private const double Alike = 3;

    /// <summary>The places of the cells, all of one form, in their order; empty when nothing moved clearly.</summary>
    public IReadOnlyList<NumberPlace> Cells()
    {
        var moved = Enumerable.Range(0, places.Count).Where(k => places[k].Length == 1 && IsClear(k)).Select(k => places[k]).ToList();
        // Numbers of one form are of one unit. Two halves that are quiet together are one number; a float that makes sense is hardly chance.
        var best = Enumerable.Range(0, places.Count).Where(IsClear).GroupBy(k => places[k].Form).Select(Apart)
            .OrderByDescending(cells => places[cells[0]].Length)
            .ThenBy(cells => moved.Count(m => !cells.Exists(c => places[c].Overlaps(m))))
            .ThenBy(cells => places[cells[0]].Form is NumberForm.F32HighFirst or NumberForm.F32LowFirst ? 0 : 1)
            // The high half of one number and the low half of the next are nearly that number: but the first register is left over then.
            .ThenBy(cells => cells.Min(k => places[k].At)).ThenBy(cells => cells.Sum(k => loaded[k].Noise)).FirstOrDefault();
        return best is null ? [] : [.. Different(best).Select(k => places[k])];
    }

    // Places that do not overlap, the quietest first.
    private List<int> Apart(IEnumerable<int> ofOneForm)
    {
        var apart = new List<int>();
        foreach (var k in ofOneForm.OrderBy(k => rest[k].Noise + loaded[k].Noise).ThenBy(k => places[k].At))
            if (!apart.Exists(a => places[a].Overlaps(places[k])))
                apart.Add(k);
        return apart;
    }

    private List<int> Different(List<int> cells)
    {
        var most = cells.Max(k => Math.Abs(Move(k)));
        var different = new List<int>();
        foreach (var k in cells.Where(k => Math.Abs(Move(k)) >= LeastPart * most).OrderBy(k => places[k].At))
            if (!different.Exists(c => Math.Abs(Move(c) - Move(k)) <= Alike * (rest[c].Noise + rest[k].Noise)))
                different.Add(k);
        return different;
    }

    private double Move(int k) => loaded[k].Mean - rest[k].Mean;

    private bool IsClear(int k)
    {
        var move = Math.Abs(Move(k));
        return double.IsFinite(move) && move > 0 && move > LeastClear * rest[k].Noise && places[k].Form switch
        {
            NumberForm.S32HighFirst => rest[k].Noise < MostPairNoise && IsHighHalf(places[k].At),
            NumberForm.S32LowFirst => rest[k].Noise < MostPairNoise && IsHighHalf(places[k].At + 1),
            NumberForm.F32HighFirst or NumberForm.F32LowFirst => IsFloat(rest[k].Mean) && IsFloat(loaded[k].Mean) && move > LeastSteadyFloat * loaded[k].Noise,
            _ => true,
        };
    }

    private static bool IsFloat(double value) => value == 0 || Math.Abs(value) is > LeastFloat and < MostFloat;

    // A high half is in use or holds the sign.
    private bool IsHighHalf(int register)
    {
        var k = places.Index().First(p => p.Item == new NumberPlace(register, NumberForm.S16)).Index;
        return Move(k) != 0 || rest[k].Mean is 0 or -1;
    }
}
